#include "kiosk/screens/presenting/places/inks_place.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/inks_words.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

template <class Records>
std::vector<std::string> namesOf(const Records& all) {
    std::vector<std::string> names;
    for (const auto& one : all) {
        names.push_back(one.name);
    }
    return names;
}

std::vector<analytics::InkFamily> plain(const std::vector<records::FamilyRecord>& all) {
    std::vector<analytics::InkFamily> families;
    for (const auto& one : all) {
        families.push_back(records::toFamily(one));
    }
    return families;
}

std::vector<analytics::Fabric> plain(const std::vector<records::FabricRecord>& all) {
    std::vector<analytics::Fabric> fabrics;
    for (const auto& one : all) {
        fabrics.push_back(records::toFabric(one));
    }
    return fabrics;
}

} // namespace

void InksPlace::failed(const ledger::Failure& failure) const {
    m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
}

void InksPlace::reload() {
    const auto& book = m_needs.book->reader();
    const bool all = took(records::newestFamilies(book), m_families) && took(records::newestFabrics(book), m_fabrics) &&
                     took(records::buckets(book, false), m_buckets);
    if (all) {
        chooseAgain();
    }
}

void InksPlace::chooseAgain() {
    const auto chosen = m_chosen;
    if (!chosen.empty() && !choose(chosen)) {
        m_chosen.clear();
        m_shown = std::monostate{};
    }
}

bool InksPlace::choose(const std::string& id) {
    const auto& book = m_needs.book->reader();
    if (const auto family = behindPrefix(id, kInksFamily)) {
        Families revisions;
        if (took(records::revisionsOfFamily(book, *family), revisions) && !revisions.empty()) {
            m_chosen = id;
            m_shown = std::move(revisions);
        }
    } else if (const auto cloth = behindPrefix(id, kInksCloth)) {
        Fabrics revisions;
        if (took(records::revisionsOfFabric(book, *cloth), revisions) && !revisions.empty()) {
            m_chosen = id;
            m_shown = std::move(revisions);
        }
    } else if (const auto number = numberBehind(id, kInksBucket)) {
        chooseBucket(*number);
    } else {
        return false;
    }
    return true;
}

void InksPlace::chooseBucket(std::int64_t number) {
    const auto& book = m_needs.book->reader();
    std::optional<records::BucketTree> tree;
    ShownBucket shown;
    if (!took(records::ancestry(book, number), tree) || !took(records::inkOfBucket(book, number), shown.ink)) {
        return;
    }
    if (!tree) {
        m_needs.tell({m_needs.speech().text("inks.bucket-unknown", {{"bucket", std::to_string(number)}}),
                      text("inks.bucket-unknown-kept"), text("inks.bucket-unknown-to-do")});
        return;
    }
    shown.tree = std::move(*tree);
    shown.families = plain(m_families);
    shown.fabrics = plain(m_fabrics);
    m_chosen = std::string{kInksBucket} + std::to_string(number);
    m_shown = std::move(shown);
}

bool InksPlace::act(const std::string& id) {
    if (id == "inks.back") {
        if (isFormShown()) {
            m_form.reset();
        } else if (m_closing) {
            m_closing.reset();
        } else {
            m_chosen.clear();
            m_shown = std::monostate{};
        }
        return true;
    }
    if (id == "inks.resume" && m_form) {
        m_aside = false;
        return true;
    }
    if (id == "inks.save" && isFormShown()) {
        save();
        return true;
    }
    if (isFormShown() && m_form->act(id)) {
        m_form->touch();
        return true;
    }
    if (choose(id)) {
        putAside();
        return true;
    }
    return startForm(id) || actOnBucket(id);
}

/// What is half typed is kept while something else is looked at.
void InksPlace::putAside() {
    m_closing.reset();
    m_aside = true;
    if (!isWriting()) {
        m_form.reset();
    }
}

bool InksPlace::startForm(const std::string& id) {
    static constexpr std::array<std::string_view, 5> kForms{"inks.new-family", "inks.new-cloth", "inks.open-bucket",
                                                            "inks.mix", "inks.revise"};
    if (std::find(kForms.begin(), kForms.end(), id) == kForms.end()) {
        return false;
    }
    m_closing.reset();
    m_aside = false;
    if (isWriting()) { // it comes back instead: nothing is typed twice
        m_needs.tell({text("inks.one-form"), {}, {}});
        return true;
    }
    m_form.reset();
    const auto unit = m_needs.speech().figures.unit;
    if (id == "inks.new-family") {
        shop::FamilyDraft draft;
        draft.unit = unit;
        m_form = familyForm(std::move(draft), namesOf(m_families));
    } else if (id == "inks.new-cloth") {
        shop::FabricDraft draft;
        draft.unit = unit;
        m_form = fabricForm(std::move(draft), namesOf(m_fabrics));
    } else if (id == "inks.open-bucket") {
        m_form = bucketForm(namesOf(m_families), [this] { return m_needs.clock->wall().millisecondsSinceEpoch; });
    } else if (id == "inks.mix") {
        startMix();
    } else if (const auto* family = std::get_if<Families>(&m_shown); family != nullptr && id == "inks.revise") {
        m_form = familyForm(shop::draftOf(family->back(), unit), {});
    } else if (const auto* fabric = std::get_if<Fabrics>(&m_shown); fabric != nullptr && id == "inks.revise") {
        m_form = fabricForm(shop::draftOf(fabric->back(), unit), {});
    }
    return m_form != nullptr;
}

void InksPlace::startMix() {
    std::int64_t number = 0;
    if (took(records::nextNumber(m_needs.book->reader(), records::Numbered::bucket), number)) {
        m_form = mixForm(number, m_buckets, [this](const auto& parts) { return mixStock(parts); });
    }
}

shop::MixStock InksPlace::mixStock(const std::vector<std::int64_t>& parts) const {
    shop::MixStock stock;
    for (const auto number : parts) {
        const auto tree = records::ancestry(m_needs.book->reader(), number);
        if (tree && *tree) {
            stock.trees.emplace(number, **tree);
        }
    }
    stock.families = plain(m_families);
    const auto wall = m_needs.clock->wall();
    stock.now = wall.millisecondsSinceEpoch;
    stock.today = drivers::localDay(wall);
    return stock;
}

bool InksPlace::actOnBucket(const std::string& id) {
    const auto* shown = std::get_if<ShownBucket>(&m_shown);
    if (shown == nullptr || isFormShown()) {
        return false;
    }
    const auto& bucket = shown->tree.bucket;
    if (id == "inks.label") {
        m_needs.print({PrintWish::What::bucketLabel, bucket.number});
        return true;
    }
    if (id == "inks.close-now" && m_closing) {
        keep(records::BucketClosed{bucket.id, *m_closing}, m_chosen);
        return true;
    }
    const auto end = std::find_if(kInksEnds.begin(), kInksEnds.end(), [&](const auto& row) { return id == row.id; });
    if (end == kInksEnds.end()) {
        return false;
    }
    if (!bucket.closed) {
        m_closing = end->end;
    }
    return true;
}

bool InksPlace::enter(const std::string& field, const std::string& typed) {
    if (!isFormShown() || !m_form->enter(field, typed)) {
        return false;
    }
    m_form->touch();
    return true;
}

bool InksPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (code.kind != drivers::TicketKind::bucket) {
        return false;
    }
    const auto number = static_cast<std::int64_t>(code.number);
    if (onScreen && isFormShown() && m_form->addBucket(number)) {
        m_form->touch();
        return true;
    }
    if (!onScreen) {
        reload();
    }
    putAside();
    if (m_form) {
        m_needs.tell({text("inks.form-kept"), {}, {}});
    }
    m_chosen.clear(); // an unknown bucket must not leave another one's answer on the screen
    m_shown = std::monostate{};
    chooseBucket(number);
    return true;
}

} // namespace holdfast::kiosk::screens
