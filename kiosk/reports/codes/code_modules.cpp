#include "kiosk/reports/codes/code_modules.hpp"

#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>

#include <algorithm>
#include <exception>
#include <string>

namespace holdfast::kiosk::reports {

namespace {

constexpr std::size_t kMostCodeSigns = 80;
constexpr int kQuarter = 6; // zxing-cpp's scale of 0 to 8; 5 and 6 are level Q

CodeModules fromMatrix(Symbology symbology, const ZXing::BitMatrix& matrix) {
    CodeModules out{symbology, matrix.width(), matrix.height(), {}};
    out.dark.reserve(static_cast<std::size_t>(out.width) * static_cast<std::size_t>(out.height));
    for (int row = 0; row < out.height; ++row) {
        for (int column = 0; column < out.width; ++column) {
            out.dark.push_back(matrix.get(column, row));
        }
    }
    return out;
}

} // namespace

std::optional<CodeModules> modulesOf(Symbology symbology, std::string_view text) {
    const bool printable = std::all_of(text.begin(), text.end(), [](char sign) { return sign >= ' ' && sign <= '~'; });
    if (text.empty() || text.size() > kMostCodeSigns || !printable) {
        return std::nullopt;
    }
    const bool bars = symbology == Symbology::code128;
    try {
        ZXing::MultiFormatWriter writer(bars ? ZXing::BarcodeFormat::Code128 : ZXing::BarcodeFormat::QRCode);
        writer.setMargin(0).setEccLevel(kQuarter);
        return fromMatrix(symbology, writer.encode(std::string{text}, 0, bars ? 1 : 0));
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

} // namespace holdfast::kiosk::reports
