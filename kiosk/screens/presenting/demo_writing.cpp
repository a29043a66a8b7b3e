#include "kiosk/screens/presenting/demo_writing.hpp"

#include "kiosk/screens/presenting/places/blocks.hpp"

namespace holdfast::kiosk::screens {

DemoWritingShown demoWritingShown(const wording::Speech& speech) {
    DemoWritingShown shown;
    shown.frame.place = QStringLiteral("demo-writing");
    shown.frame.header.title.what = toQString(speech.text("commands.demo-writing.head"));
    shown.frame.header.demo = true;
    shown.page.blocks = {textBlock(SheetKinds::Lead, speech.text("commands.demo-writing")),
                         textBlock(SheetKinds::Sentence, speech.text("commands.demo-writing.then"))};
    return shown;
}

} // namespace holdfast::kiosk::screens
