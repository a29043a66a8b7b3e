#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/cure/window.hpp"
#include "kiosk/wording/figures.hpp"
#include "kiosk/wording/language.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::wording {

/// Who is spoken to and how: the language, the shown unit, and what the run's layers are called.
struct Speech final {
    const Language* language = &Language::english();
    Figures figures;
    std::vector<std::string> layers; ///< colours, bottom first; an empty name becomes "layer 2"

    [[nodiscard]] std::string text(std::string_view key, const Arguments& arguments = {}) const {
        return language->text(key, arguments);
    }
    /// "black", "layer 2"; no position: "the film".
    [[nodiscard]] std::string layer(std::optional<int> position) const;
};

/// The same speech with the layers of this plan.
[[nodiscard]] Speech speechFor(Speech speech, const analytics::RunPlan& plan);

/// One full sentence for a reason. Figures get as many decimals as it takes to show on which side of the limit they
/// are.
[[nodiscard]] std::string sentence(const analytics::Reason& reason, const Speech& speech);
/// The first `most` different sentences in a row; layers often give the same one.
[[nodiscard]] std::string sentences(const std::vector<analytics::Reason>& reasons, std::size_t most,
                                    const Speech& speech);
[[nodiscard]] std::string sentence(analytics::Remedy remedy, const Speech& speech);
/// What can be done beside the ways out.
[[nodiscard]] std::string sentence(analytics::Advice advice, const Speech& speech);
[[nodiscard]] std::string sentence(analytics::WindowFault fault, const Speech& speech);
[[nodiscard]] std::string word(analytics::Word word, const Speech& speech);
[[nodiscard]] std::string word(analytics::FlashWord word, const Speech& speech);

/// A margin as people read it: "+6 °F", "−8 °F", "−1 to +16 °F", "at least +3 °F"; absent: empty.
[[nodiscard]] std::string marginText(const std::optional<analytics::MarginRange>& margin, const Speech& speech);

/// The figure that stands beside a verdict's word: overheated, how far over the ceiling; else the margin, with as many
/// decimals as it takes to tell it from 0 and from the guard.
[[nodiscard]] std::string headMarginText(const analytics::Verdict& verdict, const Speech& speech);

/// "285–300 °F", "320 °F and up", "320 over 300".
[[nodiscard]] std::string windowText(const analytics::RunWindow& window, const Speech& speech);

/// "Black in low-cure, with P-3".
[[nodiscard]] std::string wayOutTitle(const analytics::WayOut& way, const Speech& speech);
/// "window 285–300 °F · bleed watch due".
[[nodiscard]] std::string wayOutDetail(const analytics::WayOut& way, const Speech& speech);

/// The window in sentences, most important first: state, culprits, what each layer asks.
[[nodiscard]] std::vector<std::string> windowSentences(const analytics::RunPlan& plan,
                                                       const analytics::RunWindow& window, const Speech& speech);

} // namespace holdfast::kiosk::wording
