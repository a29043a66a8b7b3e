#include "kiosk/screens/presenting/testing/pictures.hpp"

#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/records/print_records.hpp"

#include <QBuffer>
#include <QByteArray>
#include <QFile>
#include <QImage>
#include <QImageReader>
#define ZX_USE_UTF8 // texts of codes as UTF-8
#include <ZXing/ReadBarcode.h>

#include <set>

namespace holdfast::kiosk::screens {
namespace {

using Cause = shop::PictureFaultCause;

constexpr int kQuality = 85;
constexpr int kMegabytesForPixels = 512; ///< four bytes for each of kMostPixels, and some

/// The reader's name of the content; nullptr for anything else.
const char* formatOf(const QByteArray& bytes) {
    if (bytes.startsWith(QByteArrayLiteral("\xFF\xD8\xFF"))) {
        return "jpeg";
    }
    return bytes.startsWith(QByteArrayLiteral("\x89PNG\r\n\x1A\n")) ? "png" : nullptr;
}

std::optional<std::int64_t> printIn(const QImage& image) {
    const auto grey = image.convertToFormat(QImage::Format_Grayscale8);
    ZXing::DecodeHints hints;
    hints.setTryHarder(true);
    hints.setTryRotate(true);
    hints.setFormats(ZXing::BarcodeFormat::QRCode | ZXing::BarcodeFormat::Code128);
    std::set<std::uint64_t> numbers;
    try {
        const ZXing::ImageView view{grey.constBits(), grey.width(), grey.height(), ZXing::ImageFormat::Lum,
                                    static_cast<int>(grey.bytesPerLine())};
        for (const auto& found : ZXing::ReadBarcodes(view, hints)) {
            const auto code = drivers::decode(found.text());
            if (code && code->kind == drivers::TicketKind::print &&
                code->number < static_cast<std::uint64_t>(records::kMostPrints)) {
                numbers.insert(code->number);
            }
        }
    } catch (const std::exception&) { // nothing that can be read as a code
        return std::nullopt;
    }
    return numbers.size() == 1 ? std::optional{static_cast<std::int64_t>(*numbers.begin())} : std::nullopt;
}

tl::expected<QImage, Cause> imageFrom(QByteArray bytes) {
    const char* format = formatOf(bytes);
    if (format == nullptr) {
        return tl::unexpected(Cause::notAPicture);
    }
    QImageReader::setAllocationLimit(kMegabytesForPixels);
    QBuffer buffer{&bytes};
    QImageReader reader{&buffer, format};
    reader.setAutoTransform(true);
    const auto size = reader.size();
    if (!size.isValid() || size.isEmpty()) {
        return tl::unexpected(Cause::damaged);
    }
    if (static_cast<std::int64_t>(size.width()) * size.height() > kMostPixels) {
        return tl::unexpected(Cause::tooManyPixels);
    }
    if (std::max(size.width(), size.height()) > kLongestSide) {
        reader.setScaledSize(size.scaled(kLongestSide, kLongestSide, Qt::KeepAspectRatio).expandedTo({1, 1}));
    }
    QImage image;
    if (!reader.read(&image) || image.isNull()) {
        return tl::unexpected(Cause::damaged);
    }
    return image;
}

/// JPEG knows no transparency: what shines through is white.
QImage opaque(const QImage& image) {
    if (!image.hasAlphaChannel()) {
        return image.convertToFormat(QImage::Format_RGB888);
    }
    QImage ground{image.size(), QImage::Format_RGB888};
    ground.fill(Qt::white);
    const auto pixels = image.convertToFormat(QImage::Format_ARGB32);
    for (int y = 0; y < pixels.height(); ++y) {
        for (int x = 0; x < pixels.width(); ++x) {
            const auto one = pixels.pixel(x, y);
            const auto mixed = [&](int channel) { return 255 + (channel - 255) * qAlpha(one) / 255; };
            ground.setPixel(x, y, qRgb(mixed(qRed(one)), mixed(qGreen(one)), mixed(qBlue(one))));
        }
    }
    return ground;
}

} // namespace

tl::expected<PictureRead, shop::PictureFault> readPicture(const std::filesystem::path& file) {
    const auto fault = [&](Cause cause) { return tl::unexpected(shop::PictureFault{cause, file.filename().string()}); };
    std::error_code error;
    const auto size = std::filesystem::file_size(file, error);
    if (error) {
        return fault(Cause::unreadable);
    }
    if (size > kLargestPictureFile) {
        return fault(Cause::tooLarge);
    }
    QFile opened{QString::fromStdString(file.string())};
    if (!opened.open(QIODevice::ReadOnly)) {
        return fault(Cause::unreadable);
    }
    auto bytes = opened.read(static_cast<qint64>(kLargestPictureFile) + 1);
    if (static_cast<std::uintmax_t>(bytes.size()) > kLargestPictureFile) { // it has grown since
        return fault(Cause::tooLarge);
    }
    const auto image = imageFrom(std::move(bytes));
    if (!image) {
        return fault(image.error());
    }
    QByteArray jpeg;
    QBuffer out{&jpeg};
    if (!opaque(*image).save(&out, "jpeg", kQuality)) {
        return fault(Cause::damaged);
    }
    PictureRead read;
    read.jpeg.assign(jpeg.begin(), jpeg.end());
    read.sha256 = ledger::toHex(ledger::sha256(read.jpeg));
    read.print = printIn(*image);
    read.file = file;
    return read;
}

} // namespace holdfast::kiosk::screens
