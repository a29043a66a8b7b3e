#pragma once

#include "kiosk/screens/tour/tour_kiosk.hpp"

/// The ways through the places. Each begins on the Dryer place and ends there.
namespace holdfast::kiosk::screens {

/// A kiosk that nobody has used yet: what stands where nothing is yet, and the first owner.
void walkFirstDay(TourKiosk& kiosk);
/// Trends of a book without a run.
void walkTrendsEmpty(TourKiosk& kiosk);
void walkRuns(TourKiosk& kiosk);
void walkInks(TourKiosk& kiosk);
void walkInstruments(TourKiosk& kiosk);
void walkShop(TourKiosk& kiosk);
void walkSignIn(TourKiosk& kiosk);
/// Dryer, Run and Strip with rides and strips.
void walkFloor(TourKiosk& kiosk);
/// Figures typed by hand, the note of a flash, the dryer's own sheet, the hand-over, a power loss.
void walkReadings(TourKiosk& kiosk);

// In the demo's shop, since they need a history.
/// The owner and QA get a PIN, so that two can sign.
void walkSecrets(TourKiosk& kiosk);
void walkPrintTests(TourKiosk& kiosk);
/// Lots on hold, pieces, the shelf, a decision that two sign.
void walkHolds(TourKiosk& kiosk);
void walkTrace(TourKiosk& kiosk);
void walkComplaint(TourKiosk& kiosk);
/// Margins, failures, what they share, the wash, narrowed and whole.
void walkTrends(TourKiosk& kiosk);

} // namespace holdfast::kiosk::screens
