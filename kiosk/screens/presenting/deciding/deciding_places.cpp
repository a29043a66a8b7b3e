#include "kiosk/screens/presenting/deciding/deciding_places.hpp"

namespace holdfast::kiosk::screens {

DecidingPlaces decidingPlaces(const PlaceNeeds& needs) {
    const auto links = std::make_shared<DecidingLinks>();
    DecidingPlaces places;
    places.holds = std::make_unique<HoldsPlace>(needs, links);
    places.trace = std::make_unique<TracePlace>(needs, links);
    places.complaint = std::make_unique<ComplaintPlace>(needs, links);
    const auto go = needs.go;
    links->trace = [go, place = places.trace.get()](const std::string& run) {
        go("trace");
        place->showRun(run);
    };
    links->complaint = [go, place = places.complaint.get()](const std::string& complaint) {
        go("complaint");
        place->showComplaint(complaint);
    };
    links->lot = [go, place = places.holds.get()](const std::string& lot) {
        go("holds");
        place->showLot(lot);
    };
    return places;
}

} // namespace holdfast::kiosk::screens
