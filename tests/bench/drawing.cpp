#include "kiosk/screens/parts/painted_items.hpp"
#include "tests/bench/rows.hpp"
#include "tests/screens/designed/gallery_parts.hpp"

#include <QCoreApplication>
#include <QImage>
#include <QQuickRenderControl>
#include <QQuickRenderTarget>
#include <QQuickWindow>

#include <array>
#include <cmath>

namespace holdfast::bench {
namespace {

using namespace holdfast::kiosk::screens;

constexpr QSize kWhole{1280, 800};
constexpr QSize kScale{760, 480}; ///< about what the Run screen gives it at 1280×800

constexpr QPointF kPlace{200.0, 150.0};

/// Whether nothing was drawn where the item stands.
bool isPlain(const QImage& picture) {
    const QImage part = picture.copy(QRectF{kPlace, kScale}.toRect());
    QImage plain{part.size(), part.format()};
    plain.fill(part.pixel(0, 0));
    return part == plain;
}

/// A window that the software renderer draws into a picture when told to: a frame without waiting for any screen.
class HiddenStage final {
public:
    explicit HiddenStage(QQuickItem& item)
        : m_item{item}, m_window{&m_control}, m_picture{kWhole, QImage::Format_RGB32} {
        m_window.setGeometry(QRect{QPoint{}, kWhole});
        m_window.contentItem()->setSize(kWhole);
        m_window.setRenderTarget(QQuickRenderTarget::fromPaintDevice(&m_picture));
        m_item.setParentItem(m_window.contentItem());
        m_item.setPosition(kPlace);
        m_item.setSize(kScale);
        frame();
    }
    void frame() {
        m_item.update();
        m_control.polishItems();
        m_control.sync();
        m_control.render();
    }
    [[nodiscard]] bool isEmpty() const { return isPlain(m_picture); }

private:
    QQuickItem& m_item;
    QQuickRenderControl m_control;
    QQuickWindow m_window;
    QImage m_picture;
};

/// A window that is shown: a frame from the change to its swap, as people wait for it.
class ShownStage final {
public:
    explicit ShownStage(QQuickItem& item) : m_item{item} {
        m_window.setGeometry(QRect{QPoint{}, kWhole});
        m_item.setParentItem(m_window.contentItem());
        m_item.setPosition(kPlace);
        m_item.setSize(kScale);
        QObject::connect(&m_window, &QQuickWindow::frameSwapped, &m_window, [this] { m_swapped = true; });
        m_window.show();
        frame();
    }

    void frame() {
        m_item.update();
        m_swapped = false;
        while (!m_swapped) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        }
    }
    [[nodiscard]] bool isEmpty() { return isPlain(m_window.grabWindow()); }

private:
    QQuickItem& m_item;
    QQuickWindow m_window;
    bool m_swapped = false;
};

class EmptyItem final : public QQuickPaintedItem {
public:
    void paint(QPainter*) override {}
};

template <class Stage>
void drawEmpty(benchmark::State& state) {
    EmptyItem item;
    Stage stage{item};
    for (auto _ : state) {
        stage.frame();
    }
}

/// A ride of ten minutes on the run's window, `count` samples so far.
HeatScaleState riding(int count) {
    auto scale = invented::windowScale();
    scale.traceEnd = TraceEnd::Running;
    scale.expectedSeconds = 600.0;
    for (int i = 0; i < count; ++i) {
        const double at = i * 0.12;
        scale.trace.append({.seconds = at, .atShown = 180.0 + 110.0 * std::sin(at / 190.0) + 0.4 * (i % 3)});
    }
    return scale;
}

/// Every frame has another trace to draw, as while samples arrive.
template <class Stage>
void drawScale(benchmark::State& state) {
    const std::array<HeatScaleState, 2> states{riding(4999), riding(5000)};
    HeatScale item;
    Stage stage{item};
    std::size_t next = 0;
    item.setScaleState(states.back());
    stage.frame();
    if (stage.isEmpty()) {
        state.SkipWithError("cannot draw");
    }
    for (auto _ : state) {
        item.setScaleState(states[next]);
        next = 1 - next;
        stage.frame();
    }
}

} // namespace

void addDrawing(Rows& rows) {
    const std::string shown = "frame of an empty painted item, to the swap";
    rows.addBaseline(shown, drawEmpty<ShownStage>)->UseRealTime();
    rows.add({"frame of the heat scale, 5,000 samples, to the swap", shown, 2.0}, drawScale<ShownStage>)->UseRealTime();
    const std::string drawn = "empty painted item, drawing alone";
    rows.addBaseline(drawn, drawEmpty<HiddenStage>);
    rows.add({"heat scale, 5,000 samples, drawing alone", drawn, 0.0}, drawScale<HiddenStage>);
}

} // namespace holdfast::bench
