#include "kiosk/ledger/kept_statements.hpp"

namespace holdfast::kiosk::ledger {

void KeptStatement::putBack() noexcept {
    try {
        tryReset(); // whatever the last use ended with
        clearBindings();
        const std::string sql = getQuery();
        m_home->m_idle.insert_or_assign(sql, std::move(static_cast<Statement&>(*this)));
    } catch (const std::exception&) { // NOLINT(bugprone-empty-catch): then it is prepared anew the next time
    }
}

} // namespace holdfast::kiosk::ledger
