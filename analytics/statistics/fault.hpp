#pragma once

namespace holdfast::analytics::statistics {

/// Why a figure is not given. A figure that can be given with reserve carries its caveat in its own result instead.
enum class StatisticsFault {
    NoValues,       ///< nothing to work on
    TooFewValues,   ///< fewer values than the method needs
    NotFinite,      ///< a value is no number, or infinite
    NoSpread,       ///< all values equal where the method divides by their spread
    OutOfDomain,    ///< an argument outside what the method is defined for
    UnequalLengths, ///< columns that belong together have different lengths
    NoConvergence,  ///< the search for the figure did not settle
};

} // namespace holdfast::analytics::statistics
