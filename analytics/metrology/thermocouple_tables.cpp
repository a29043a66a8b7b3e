#include "analytics/metrology/thermocouple_tables.hpp"

#include <array>

// Coefficients of NIST Standard Reference Database 60 (NIST Monograph 175, Burns et al. 1993), the functions that
// IEC 60584-1:2013 and ASTM E230 print as well. Digits as published.
namespace holdfast::analytics {
namespace {

constexpr std::array kKLow{0.000000000000e+00,  0.394501280250e-01,  0.236223735980e-04,  -0.328589067840e-06,
                           -0.499048287770e-08, -0.675090591730e-10, -0.574103274280e-12, -0.310888728940e-14,
                           -0.104516093650e-16, -0.198892668780e-19, -0.163226974860e-22};
constexpr std::array kKHigh{-0.176004136860e-01, 0.389212049750e-01,  0.185587700320e-04, -0.994575928740e-07,
                            0.318409457190e-09,  -0.560728448890e-12, 0.560750590590e-15, -0.320207200030e-18,
                            0.971511471520e-22,  -0.121047212750e-25};
constexpr std::array kJLow{0.000000000000e+00,  0.503811878150e-01,  0.304758369300e-04,
                           -0.856810657200e-07, 0.132281952950e-09,  -0.170529583370e-12,
                           0.209480906970e-15,  -0.125383953360e-18, 0.156317256970e-22};
constexpr std::array kJHigh{0.296456256810e+03,  -0.149761277860e+01, 0.317871039240e-02,
                            -0.318476867010e-05, 0.157208190040e-08,  -0.306913690560e-12};
constexpr std::array kTLow{0.000000000000e+00, 0.387481063640e-01, 0.441944343470e-04, 0.118443231050e-06,
                           0.200329735540e-07, 0.901380195590e-09, 0.226511565930e-10, 0.360711542050e-12,
                           0.384939398830e-14, 0.282135219250e-16, 0.142515947790e-18, 0.487686622860e-21,
                           0.107955392700e-23, 0.139450270620e-26, 0.797951539270e-30};
constexpr std::array kTHigh{0.000000000000e+00,  0.387481063640e-01,  0.332922278800e-04,
                            0.206182434040e-06,  -0.218822568460e-08, 0.109968809280e-10,
                            -0.308157587720e-13, 0.454791352900e-16,  -0.275129016730e-19};
constexpr std::array kELow{0.000000000000e+00,  0.586655087080e-01,  0.454109771240e-04,  -0.779980486860e-06,
                           -0.258001608430e-07, -0.594525830570e-09, -0.932140586670e-11, -0.102876055340e-12,
                           -0.803701236210e-15, -0.439794973910e-17, -0.164147763550e-19, -0.396736195160e-22,
                           -0.558273287210e-25, -0.346578420130e-28};
constexpr std::array kEHigh{0.000000000000e+00,  0.586655087100e-01,  0.450322755820e-04,  0.289084072120e-07,
                            -0.330568966520e-09, 0.650244032700e-12,  -0.191974955040e-15, -0.125366004970e-17,
                            0.214892175690e-20,  -0.143880417820e-23, 0.359608994810e-27};
constexpr std::array kNLow{0.000000000000e+00,  0.261591059620e-01,  0.109574842280e-04,
                           -0.938411115540e-07, -0.464120397590e-10, -0.263033577160e-11,
                           -0.226534380030e-13, -0.760893007910e-16, -0.934196678350e-19};
constexpr std::array kNHigh{0.000000000000e+00,  0.259293946010e-01, 0.157101418800e-04,  0.438256272370e-07,
                            -0.252611697940e-09, 0.643118193390e-12, -0.100634715190e-14, 0.997453389920e-18,
                            -0.608632456070e-21, 0.208492293390e-24, -0.306821961510e-28};

constexpr std::array kKInverseLow{0.0000000e+00,  2.5173462e+01,  -1.1662878e+00, -1.0833638e+00, -8.9773540e-01,
                                  -3.7342377e-01, -8.6632643e-02, -1.0450598e-02, -5.1920577e-04};
constexpr std::array kKInverseMiddle{0.000000e+00,  2.508355e+01, 7.860106e-02,  -2.503131e-01, 8.315270e-02,
                                     -1.228034e-02, 9.804036e-04, -4.413030e-05, 1.057734e-06,  -1.052755e-08};
constexpr std::array kKInverseHigh{-1.318058e+02, 4.830222e+01, -1.646031e+00, 5.464731e-02,
                                   -9.650715e-04, 8.802193e-06, -3.110810e-08};
constexpr std::array kJInverseLow{0.0000000e+00,  1.9528268e+01,  -1.2286185e+00, -1.0752178e+00, -5.9086933e-01,
                                  -1.7256713e-01, -2.8131513e-02, -2.3963370e-03, -8.3823321e-05};
constexpr std::array kJInverseMiddle{0.000000e+00,  1.978425e+01, -2.001204e-01, 1.036969e-02,
                                     -2.549687e-04, 3.585153e-06, -5.344285e-08, 5.099890e-10};
constexpr std::array kJInverseHigh{-3.11358187e+03, 3.00543684e+02,  -9.94773230e+00,
                                   1.70276630e-01,  -1.43033468e-03, 4.73886084e-06};
constexpr std::array kTInverseLow{0.0000000e+00, 2.5949192e+01, -2.1316967e-01, 7.9018692e-01,
                                  4.2527777e-01, 1.3304473e-01, 2.0241446e-02,  1.2668171e-03};
constexpr std::array kTInverseMiddle{0.000000e+00,  2.592800e+01, -7.602961e-01, 4.637791e-02,
                                     -2.165394e-03, 6.048144e-05, -7.293422e-07};
constexpr std::array kEInverseLow{0.0000000e+00,  1.6977288e+01,  -4.3514970e-01, -1.5859697e-01, -9.2502871e-02,
                                  -2.6084314e-02, -4.1360199e-03, -3.4034030e-04, -1.1564890e-05};
constexpr std::array kEInverseMiddle{0.0000000e+00,  1.7057035e+01, -2.3301759e-01, 6.5435585e-03, -7.3562749e-05,
                                     -1.7896001e-06, 8.4036165e-08, -1.3735879e-09, 1.0629823e-11, -3.2447087e-14};
constexpr std::array kNInverseLow{0.0000000e+00, 3.8436847e+01, 1.1010485e+00, 5.2229312e+00, 7.2060525e+00,
                                  5.8488586e+00, 2.7754916e+00, 7.7075166e-01, 1.1582665e-01, 7.3138868e-03};
constexpr std::array kNInverseMiddle{0.00000e+00,  3.86896e+01,  -1.08267e+00, 4.70205e-02,
                                     -2.12169e-06, -1.17272e-04, 5.39280e-06,  -7.98156e-08};
constexpr std::array kNInverseHigh{1.972485e+01, 3.300943e+01,  -3.915159e-01,
                                   9.855391e-03, -1.274371e-04, 7.767022e-07};

constexpr std::array kKReference{ReferenceSegment{-270.0, 0.0, kKLow}, ReferenceSegment{0.0, 1372.0, kKHigh}};
constexpr std::array kJReference{ReferenceSegment{-210.0, 760.0, kJLow}, ReferenceSegment{760.0, 1200.0, kJHigh}};
constexpr std::array kTReference{ReferenceSegment{-270.0, 0.0, kTLow}, ReferenceSegment{0.0, 400.0, kTHigh}};
constexpr std::array kEReference{ReferenceSegment{-270.0, 0.0, kELow}, ReferenceSegment{0.0, 1000.0, kEHigh}};
constexpr std::array kNReference{ReferenceSegment{-270.0, 0.0, kNLow}, ReferenceSegment{0.0, 1300.0, kNHigh}};
constexpr std::array kKInverse{InverseSegment{-5.891, 0.000, kKInverseLow},
                               InverseSegment{0.000, 20.644, kKInverseMiddle},
                               InverseSegment{20.644, 54.886, kKInverseHigh}};
constexpr std::array kJInverse{InverseSegment{-8.095, 0.000, kJInverseLow},
                               InverseSegment{0.000, 42.919, kJInverseMiddle},
                               InverseSegment{42.919, 69.553, kJInverseHigh}};
constexpr std::array kTInverse{InverseSegment{-5.603, 0.000, kTInverseLow},
                               InverseSegment{0.000, 20.872, kTInverseMiddle}};
constexpr std::array kEInverse{InverseSegment{-8.825, 0.000, kEInverseLow},
                               InverseSegment{0.000, 76.373, kEInverseMiddle}};
constexpr std::array kNInverse{InverseSegment{-3.990, 0.000, kNInverseLow},
                               InverseSegment{0.000, 20.613, kNInverseMiddle},
                               InverseSegment{20.613, 47.513, kNInverseHigh}};

} // namespace

ThermocoupleTable thermocoupleTable(ThermocoupleType type) noexcept {
    switch (type) {
    case ThermocoupleType::k:
        return {kKReference, kKInverse};
    case ThermocoupleType::j:
        return {kJReference, kJInverse};
    case ThermocoupleType::t:
        return {kTReference, kTInverse};
    case ThermocoupleType::e:
        return {kEReference, kEInverse};
    case ThermocoupleType::n:
        return {kNReference, kNInverse};
    }
    return {kKReference, kKInverse};
}

} // namespace holdfast::analytics
