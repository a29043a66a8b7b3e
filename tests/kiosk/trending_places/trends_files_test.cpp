// What a press lays into the exchange folder.
#include "kiosk/screens/presenting/trending/trends_files.hpp"
#include "tests/kiosk/trending_places/trends_rig.hpp"

#include <QFile>
#include <QImage>
#include <QXmlStreamReader>

#include <fstream>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

std::string read(const std::filesystem::path& file) {
    std::ifstream in{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

std::size_t rowsOf(const std::string& csv) {
    std::size_t rows = 0;
    for (auto at = csv.find("\r\n"); at != std::string::npos; at = csv.find("\r\n", at + 2)) {
        ++rows;
    }
    return rows;
}

bool isXml(const std::filesystem::path& file) {
    QXmlStreamReader xml{QByteArray::fromStdString(read(file))};
    while (!xml.atEnd()) {
        xml.readNext();
    }
    return !xml.hasError();
}

} // namespace

TEST_CASE("a file's name keeps to small letters, figures and hyphens", "[trends][files]") {
    using std::chrono::sys_days;
    const auto day = sys_days{std::chrono::year{2026} / 3 / 3};
    CHECK(trendsFileName("margins", "North", day) == "trends-margins-north-2026-03-03");
    CHECK(trendsFileName("lots", "../Süd 2", day) == "trends-lots-s-d-2-2026-03-03");
    CHECK(trendsFileName("lots", "", day) == "trends-lots-2026-03-03");
}

TEST_CASE("the charts are written as PNG, SVG and CSV, the list as CSV, and the folder is told", "[trends][files]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    trends.act("trends.dryer.north");
    CHECK(trends.act("trends.files"));
    CHECK(reads(trends, "7 files were written to " + rig.needs.exchange.string()));
    const auto stem = (rig.needs.exchange / "trends-margins-north-2026-01-12").string(); // 14 weeks after 6 Oct 2025
    const QImage picture{QString::fromStdString(stem + ".png")};
    CHECK(picture.width() == 1280);
    CHECK(picture.height() > 200);
    CHECK(isXml(stem + ".svg"));
    CHECK(read(stem + ".csv").find("point") != std::string::npos);
    CHECK(rowsOf(read(stem + ".csv")) > 26); // of thirteen weeks: one a point and the head
    const auto shared = read(rig.needs.exchange / "trends-shared-north-2026-01-12.csv");
    CHECK(shared.find("118") != std::string::npos);
    CHECK(rowsOf(shared) >= 2);
}

TEST_CASE("the lots with a suspect are written wholly", "[trends][files]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    trends.act("trends.suspect.0");
    CHECK(trends.act("trends.files"));
    CHECK(reads(trends, "1 file was written to "));
    trends.act("trends.suspect.0");
    CHECK_FALSE(reads(trends, "1 file was written to "));
    const auto head = trends.sheet().head;
    const auto name = trendsFileName("lots", head.mid(head.lastIndexOf(u' ') + 1).toStdString(),
                                     std::chrono::sys_days{std::chrono::year{2026} / 1 / 12});
    CHECK(rowsOf(read(rig.needs.exchange / (name + ".csv"))) == 7); // six lots and the head
}

TEST_CASE("where nothing can be written, it says so and what to do", "[trends][files]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    std::filesystem::remove_all(rig.needs.exchange);
    std::ofstream{rig.needs.exchange} << "a file where the folder should be";
    CHECK(trends.act("trends.files"));
    CHECK(wasTold(rig, "The files could not be written."));
    CHECK(wasTold(rig, "Make room in "));
    std::filesystem::remove(rig.needs.exchange);
}
