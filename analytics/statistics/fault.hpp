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
    TooManyOpen,    ///< more than a third of the intervals are open at one end
    TooFewEvents,   ///< fewer failures or survivals, or from fewer lots, than the rule asks
    Collinear,      ///< columns that say the same: their shares cannot be told apart
    Separated,      ///< the likelihood has no maximum: a line divides the failures from the survivals
    OutOfOrder,     ///< a time before the one ahead of it
};

} // namespace holdfast::analytics::statistics
