#include "kiosk/screens/font_rules.hpp"
#include "kiosk/screens/gallery.hpp"

#include <QGuiApplication>

#include <cstdio>

/// holdfast_gallery FOLDER: every designed state as a picture.
int main(int argc, char** argv) {
    namespace screens = holdfast::kiosk::screens;
    screens::applyFontRules();
    QGuiApplication app(argc, argv);
    if (argc != 2) {
        std::fputs("usage: holdfast_gallery FOLDER\n", stderr);
        return 2;
    }
    const QString failure = screens::renderGallery(QString::fromLocal8Bit(argv[1]), screens::gallerySizes());
    if (!failure.isEmpty()) {
        std::fprintf(stderr, "%s\n", qPrintable(failure));
    }
    return failure.isEmpty() ? 0 : 2;
}
