#pragma once

#include "kiosk/shop/proving/proving_desk.hpp"
#include "tests/kiosk/e2e/support/rig.hpp"

#include <QStringList>

#include <memory>

class QQuickItem;

namespace holdfast::tests {

/// The one QGuiApplication of a test process, with the shipped font rules and no display.
void ensureScreen();

/// The kiosk on the demo's book in this process, put together of the same objects in the same way as main.cpp does, so
/// that a test can read what stands in its window.
class WholeKiosk final {
public:
    explicit WholeKiosk(const Rig& rig);
    WholeKiosk(const WholeKiosk&) = delete;
    WholeKiosk& operator=(const WholeKiosk&) = delete;
    ~WholeKiosk();

    /// What a person can read now: the texts of all visible items, in the order of the tree.
    [[nodiscard]] QStringList textsShown() const;
    [[nodiscard]] bool shows(const char* text) const;
    /// Some text shown has this in it.
    [[nodiscard]] bool showsPartly(const char* text) const;
    [[nodiscard]] const kiosk::shop::ProvingState& state() const;
    [[nodiscard]] bool scannerReady() const;
    /// Presses a button by the name that it has for accessibility tools, which a page scrolls to; false if there is
    /// none.
    [[nodiscard]] bool press(const char* name) const;
    /// The same by the beginning of its name.
    [[nodiscard]] bool pressWhatBegins(const char* beginning) const;
    /// Chooses the row of the sheet's list whose title begins so, in sight or not; false if there is none.
    [[nodiscard]] bool chooseRow(const char* beginning) const;
    /// Presses what the sheet shows under this id: one answer of several that are named alike.
    [[nodiscard]] bool trigger(const char* id) const;
    /// What is typed on the pad, and Enter; false if no field's pad is open.
    [[nodiscard]] bool type(const char* text) const;

private:
    class Inside;
    std::unique_ptr<Inside> m_inside;
};

} // namespace holdfast::tests
