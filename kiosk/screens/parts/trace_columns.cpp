#include "kiosk/screens/parts/trace_columns.hpp"

#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

class Columns {
public:
    void take(const QPointF& point) {
        const double column = std::floor(point.x());
        if (m_open && column == m_column) {
            m_low = point.y() > m_low.y() ? point : m_low;
            m_high = point.y() < m_high.y() ? point : m_high;
            m_last = point;
            return;
        }
        flushColumn();
        m_column = column;
        m_first = m_low = m_high = m_last = point;
        m_open = true;
    }

    void part() {
        flushColumn();
        if (m_hasPen && m_fresh) {
            m_lines.append(QLineF(m_pen, m_pen));
        }
        m_hasPen = false;
    }

    [[nodiscard]] QList<QLineF> finish() {
        part();
        return m_lines;
    }

private:
    void flushColumn() {
        if (!m_open) {
            return;
        }
        m_open = false;
        moveTo(m_first);
        const bool lowFirst = m_low.x() < m_high.x();
        moveTo(lowFirst ? m_low : m_high);
        moveTo(lowFirst ? m_high : m_low);
        moveTo(m_last);
    }

    void moveTo(const QPointF& point) {
        if (!m_hasPen) {
            m_hasPen = true;
            m_fresh = true;
        } else if (point != m_pen) {
            m_lines.append(QLineF(m_pen, point));
            m_fresh = false;
        }
        m_pen = point;
    }

    QList<QLineF> m_lines;
    QPointF m_first, m_low, m_high, m_last, m_pen;
    double m_column = 0.0;
    bool m_open = false;
    bool m_hasPen = false;
    bool m_fresh = false; ///< the pen stands on a point that no line shows yet
};

bool drawable(const TracePoint& point) {
    return std::isfinite(point.seconds) && std::isfinite(point.atShown);
}

} // namespace

QList<QLineF> traceLines(const QList<TracePoint>& trace, const HeatScaleMapping& mapping) {
    Columns columns;
    for (const TracePoint& point : trace) {
        if (point.breakBefore || !drawable(point)) {
            columns.part();
        }
        if (drawable(point)) {
            columns.take(mapping.at(point));
        }
    }
    return columns.finish();
}

std::optional<TracePoint> lastDrawn(const QList<TracePoint>& trace) {
    for (auto point = trace.crbegin(); point != trace.crend(); ++point) {
        if (drawable(*point)) {
            return *point;
        }
    }
    return std::nullopt;
}

} // namespace holdfast::kiosk::screens
