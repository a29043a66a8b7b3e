#pragma once

#include "kiosk/reports/certificate.hpp"
#include "kiosk/reports/run_ticket.hpp"
#include "kiosk/screens/presenting/places/print_source.hpp"

#include <cstdint>
#include <optional>

namespace holdfast::kiosk::screens {

/// Everything that a run's certificate is made from; nothing if the run is not in the book or the book could not be
/// read.
[[nodiscard]] std::optional<reports::CertificateFacts> certificateFactsOf(const PrintSource& source,
                                                                          const reports::RunTicket& ticket);
[[nodiscard]] PrintWanted certificateFor(const PrintSource& source, const reports::RunTicket& ticket);

} // namespace holdfast::kiosk::screens
