#include "kiosk/screens/presenting/due_texts.hpp"

#include "drivers/protocol/ticket_code.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr int kBinWidth = 4;

std::string laneText(analytics::BeltLane lane, const wording::Speech& speech) {
    switch (lane) {
    case analytics::BeltLane::left:
        return speech.text("readings.lane.left");
    case analytics::BeltLane::right:
        return speech.text("readings.lane.right");
    case analytics::BeltLane::centre:
        break;
    }
    return speech.text("readings.lane.centre");
}

std::string binText(std::int64_t bin, const wording::Speech& speech) {
    return bin > 0 ? drivers::encode(drivers::TicketKind::bin, static_cast<std::uint64_t>(bin), kBinWidth)
                   : speech.text("readings.pull.no-bin");
}

/// Pieces until the one that was drawn is the next on the belt.
std::optional<int> piecesUntil(const shop::RunWatch& run) {
    const auto& due = *run.due;
    return due.piece && run.made ? std::optional{std::max(0, *due.piece - run.made->pieces - 1)} : due.reading.inPieces;
}

} // namespace

std::string dueWhat(const shop::DuePiece& due, const wording::Speech& speech) {
    wording::Arguments arguments{{"lane", laneText(due.reading.lane, speech)}};
    if (!due.piece) {
        return speech.text("readings.due.any-piece", arguments);
    }
    arguments["piece"] = std::to_string(*due.piece);
    return speech.text("readings.due.piece", arguments);
}

std::string dueWhen(const shop::RunWatch& run, const wording::Speech& speech) {
    const auto& due = run.due->reading;
    if (due.now) {
        return speech.text("header.due-now");
    }
    if (due.why == analytics::DueWhy::minutes && due.inRunning) {
        return speech.text("readings.due.in-time", {{"duration", wording::waitText(*due.inRunning)}});
    }
    return speech.text("readings.due.in-pieces", {{"count", std::to_string(piecesUntil(run).value_or(0))}});
}

std::string dueShort(const shop::RunWatch& run, const wording::Speech& speech) {
    const auto& due = run.due->reading;
    return due.now ? dueWhat(*run.due, speech)
                   : speech.text("readings.due.later",
                                 {{"when", dueWhen(run, speech)}, {"lane", laneText(due.lane, speech)}});
}

std::string dueSentence(const shop::RunWatch& run, const wording::Speech& speech) {
    const auto what = dueWhat(*run.due, speech);
    return run.due->reading.now
               ? speech.text("readings.due.now-do", {{"what", what}})
               : speech.text("readings.due.later-do", {{"what", what}, {"when", dueWhen(run, speech)}});
}

std::string pullOrder(const shop::BinBracket& bracket, const wording::Speech& speech) {
    wording::Arguments arguments{{"bin", binText(bracket.bin, speech)}};
    if (!bracket.known) {
        return speech.text("readings.pull.lot", arguments);
    }
    arguments["first"] = std::to_string(bracket.pieces.first);
    arguments["last"] = std::to_string(bracket.pieces.last);
    arguments["count"] = speech.text("readings.due.in-pieces", {{"count", std::to_string(bracket.pieces.count())}});
    const auto order = speech.text("readings.pull.pieces", arguments);
    return bracket.open ? order + " " + speech.text("readings.pull.open") : order;
}

std::string pullNote(const shop::BinBracket& bracket, const wording::Speech& speech) {
    return bracket.known ? speech.text("readings.pull.note", {{"bin", binText(bracket.bin, speech)},
                                                              {"first", std::to_string(bracket.pieces.first)},
                                                              {"last", std::to_string(bracket.pieces.last)}})
                         : std::string{};
}

std::string countText(const shop::RunWatch& run, const wording::Speech& speech) {
    if (!run.made) {
        return speech.text("readings.count.unknown");
    }
    const wording::Arguments pieces{{"pieces", std::to_string(run.made->pieces)}};
    switch (run.made->source) {
    case analytics::CountSource::counter:
        return speech.text("readings.count.counter", pieces);
    case analytics::CountSource::typed:
        return speech.text("readings.count.typed", pieces);
    case analytics::CountSource::rate:
        break;
    }
    return speech.text("readings.count.rate", pieces);
}

} // namespace holdfast::kiosk::screens
