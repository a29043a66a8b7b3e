// Pictures from a folder: taken by content, found by their code, kept under their hash.
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/reports/codes/code_modules.hpp"
#include "kiosk/screens/presenting/testing/picture_inbox.hpp"
#include "kiosk/screens/presenting/testing/picture_provider.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <QColor>
#include <QImage>
#include <QPainter>
#include <catch2/catch.hpp>

#include <fstream>
#include <unistd.h>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

class Folder final {
public:
    Folder() : path{std::filesystem::temp_directory_path() / ("holdfast-pictures-" + std::to_string(::getpid()))} {
        std::filesystem::remove_all(path);
        std::filesystem::create_directories(path);
    }
    ~Folder() { std::filesystem::remove_all(path); }
    std::filesystem::path write(const std::string& name, const std::string& bytes) const {
        std::ofstream{path / name, std::ios::binary} << bytes;
        return path / name;
    }
    std::filesystem::path save(const std::string& name, const QImage& image, const char* format) const {
        REQUIRE(image.save(QString::fromStdString((path / name).string()), format));
        return path / name;
    }
    std::filesystem::path path;
};

/// A grey ground with the code of a print in it.
QImage photograph(std::uint64_t print, int width, int height) {
    QImage image{width, height, QImage::Format_RGB888};
    image.fill(QColor{214, 205, 190});
    const auto text = drivers::encode(drivers::TicketKind::print, print, 4);
    const auto modules = reports::modulesOf(reports::Symbology::qr, text);
    REQUIRE(modules);
    constexpr int kModule = 6;
    QPainter painter{&image};
    painter.fillRect(20, 20, (modules->width + 8) * kModule, (modules->height + 8) * kModule, Qt::white);
    for (int y = 0; y < modules->height; ++y) {
        for (int x = 0; x < modules->width; ++x) {
            if (modules->at(x, y)) {
                painter.fillRect(20 + (x + 4) * kModule, 20 + (y + 4) * kModule, kModule, kModule, Qt::black);
            }
        }
    }
    return image;
}

shop::PictureFaultCause causeOf(const std::filesystem::path& file) {
    const auto read = readPicture(file);
    REQUIRE_FALSE(read);
    CHECK(read.error().file == file.filename().string());
    return read.error().cause;
}

} // namespace

TEST_CASE("a picture is known by its content, whatever it is called", "[testing][pictures]") {
    Folder folder;
    QImage plain{300, 200, QImage::Format_RGB888};
    plain.fill(Qt::darkGreen);
    CHECK(readPicture(folder.save("photo.txt", plain, "png")));
    CHECK(readPicture(folder.save("photo", plain, "jpeg")));
    using Cause = shop::PictureFaultCause;
    CHECK(causeOf(folder.write("movie.jpg", "RIFF....AVI LIST")) == Cause::notAPicture);
    CHECK(causeOf(folder.write("text.png", "not a picture at all")) == Cause::notAPicture);
    CHECK(causeOf(folder.write("cut.jpg", std::string("\xFF\xD8\xFF\xE0", 4) + "and then nothing")) == Cause::damaged);
    CHECK(causeOf(folder.path / "gone.jpg") == Cause::unreadable);
}

TEST_CASE("two hundred megabytes are refused without being read", "[testing][pictures][refusal]") {
    Folder folder;
    const auto file = folder.write("huge.jpg", std::string("\xFF\xD8\xFF\xE0", 4));
    std::filesystem::resize_file(file, 200'000'000);
    CHECK(causeOf(file) == shop::PictureFaultCause::tooLarge);
    CHECK(std::filesystem::exists(file));
}

TEST_CASE("too many pixels are refused by the head of the file alone", "[testing][pictures][refusal]") {
    Folder folder;
    QImage small{8, 8, QImage::Format_Grayscale8};
    small.fill(0);
    const auto file = folder.save("wide.png", small, "png");
    // ISO/IEC 15948, 11.2.2: width and height are the first eight bytes of IHDR, at offset 16; its CRC-32 at offset 29.
    std::string bytes;
    {
        std::ifstream in{file, std::ios::binary};
        bytes.assign(std::istreambuf_iterator<char>{in}, {});
    }
    bytes.replace(16, 8, std::string("\x00\x00\x40\x00\x00\x00\x40\x00", 8)); // 16,384 × 16,384
    std::uint32_t crc = 0xFFFF'FFFFU;
    for (std::size_t i = 12; i < 29; ++i) {
        crc ^= static_cast<std::uint8_t>(bytes[i]);
        for (int bit = 0; bit < 8; ++bit) {
            crc = (crc >> 1U) ^ ((crc & 1U) != 0U ? 0xEDB8'8320U : 0U);
        }
    }
    crc = ~crc;
    for (std::size_t i = 0; i < 4; ++i) {
        bytes[29 + i] = static_cast<char>((crc >> (24U - 8U * i)) & 0xFFU);
    }
    CHECK(causeOf(folder.write("wide.png", bytes)) == shop::PictureFaultCause::tooManyPixels);
}

TEST_CASE("a print's code in the picture says whose it is; two codes say nothing", "[testing][pictures]") {
    Folder folder;
    const auto one = readPicture(folder.save("one.png", photograph(4711, 900, 700), "png"));
    REQUIRE(one);
    CHECK(one->print == 4711);
    auto both = photograph(4711, 1200, 700);
    QPainter painter{&both};
    painter.drawImage(600, 0, photograph(12, 600, 700));
    painter.end();
    const auto two = readPicture(folder.save("two.png", both, "png"));
    REQUIRE(two);
    CHECK_FALSE(two->print);
    QImage none{300, 200, QImage::Format_RGB888};
    none.fill(Qt::white);
    CHECK_FALSE(readPicture(folder.save("none.jpg", none, "jpeg"))->print);
}

TEST_CASE("a large picture is made smaller and named by the hash of what is kept", "[testing][pictures]") {
    Folder folder;
    const auto read = readPicture(folder.save("large.jpg", photograph(9, 4000, 3000), "jpeg"));
    REQUIRE(read);
    QImage kept;
    REQUIRE(kept.loadFromData(read->jpeg.data(), static_cast<int>(read->jpeg.size()), "jpeg"));
    CHECK(kept.width() == 2048);
    CHECK(kept.height() == 1536);
    CHECK(read->sha256 == ledger::toHex(ledger::sha256(read->jpeg)));
}

TEST_CASE("a file is taken once it has stopped growing, and moves away once it is kept", "[testing][pictures]") {
    application();
    Folder folder;
    int changes = 0;
    const auto shelf = std::make_shared<WaitingPictures>();
    PictureInbox inbox{folder.path, shelf, [&] { ++changes; }};
    const auto file = folder.save("one.png", photograph(4711, 900, 700), "png");
    inbox.look(); // seen for the first time
    CHECK(inbox.waiting().empty());
    REQUIRE(until([&] { return !inbox.waiting().empty(); })); // looks again by itself
    CHECK(changes == 1);
    const auto sha = inbox.waiting().front().sha256;
    CHECK(shelf->find(sha));
    folder.write("text.png", "not a picture at all");
    REQUIRE(until([&] { return !inbox.refused().empty(); }));
    CHECK(inbox.refused().front() == shop::PictureFault{shop::PictureFaultCause::notAPicture, "text.png"});
    inbox.taken(sha);
    CHECK(inbox.waiting().empty());
    CHECK_FALSE(std::filesystem::exists(file));
    CHECK(std::filesystem::exists(folder.path / "taken" / "one.png"));
    CHECK(std::filesystem::exists(folder.path / "text.png")); // what is refused is left where it lies
    CHECK_FALSE(shelf->find(sha));
}

TEST_CASE("pictures of the book and those that wait are served by their hash, others are not", "[testing][pictures]") {
    PlaceRig rig;
    rig.shop.plan();
    QImage blue{40, 30, QImage::Format_RGB888};
    blue.fill(Qt::blue);
    Folder folder;
    const auto read = readPicture(folder.save("blue.png", blue, "png"));
    REQUIRE(read);
    const auto waiting = std::make_shared<WaitingPictures>();
    PictureProvider provider{rig.shop.book(), waiting};
    QSize size;
    const auto id = QString::fromStdString(read->sha256);
    CHECK(provider.requestImage(id, &size, {}).isNull());
    waiting->put(read->sha256, read->jpeg);
    CHECK(provider.requestImage(id, &size, {}).size() == QSize{40, 30});
    waiting->drop(read->sha256);
    records::SettingChanged setting;
    setting.key = "language";
    setting.value = std::string{"en"};
    rig.needs.keep({{setting}, 0, {}, {}, {{"picture", read->jpeg}}},
                   [](const auto& failure) { REQUIRE_FALSE(failure); });
    CHECK(provider.requestImage(id, &size, {}).size() == QSize{40, 30});
    CHECK(size == QSize{40, 30});
    CHECK(provider.requestImage(id, &size, {20, 20}).width() == 20);
    CHECK(provider.requestImage(QStringLiteral("../book.sqlite"), &size, {}).isNull());
    CHECK(provider.requestImage(QString{}, &size, {}).isNull());
}
