#include "kiosk/screens/presenting/places/inks_place.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/inks_words.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kFamily = "inks.pick.family.";
constexpr std::string_view kCloth = "inks.pick.cloth.";
constexpr std::string_view kBucket = "inks.pick.bucket.";

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

SheetRow headingRow(const std::string& title) {
    auto row = factRow(title, {});
    row.strong = true;
    return row;
}

} // namespace

template <class Asked>
bool InksPlace::took(const ledger::Result<Asked>& asked, Asked& into) {
    if (!asked) {
        failed(asked.error());
        return false;
    }
    into = *asked;
    return true;
}

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
    if (const auto family = behindPrefix(id, kFamily)) {
        Families revisions;
        if (took(records::revisionsOfFamily(book, *family), revisions) && !revisions.empty()) {
            m_chosen = id;
            m_shown = std::move(revisions);
        }
    } else if (const auto cloth = behindPrefix(id, kCloth)) {
        Fabrics revisions;
        if (took(records::revisionsOfFabric(book, *cloth), revisions) && !revisions.empty()) {
            m_chosen = id;
            m_shown = std::move(revisions);
        }
    } else if (const auto number = numberBehind(id, kBucket)) {
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
        shop::StockFault fault{shop::StockFaultCause::bucketUnknown, {}};
        fault.bucket = number;
        m_needs.tell({wording::sentence(fault, m_needs.speech()), {}, {}});
        return;
    }
    shown.tree = std::move(*tree);
    shown.families = plain(m_families);
    shown.fabrics = plain(m_fabrics);
    m_chosen = std::string{kBucket} + std::to_string(number);
    m_shown = std::move(shown);
}

SheetPageState InksPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text("inks.heading"));
    page.listNone = toQString(text("inks.none"));
    addList(page);
    page.listActions = {pressOf("inks.open-bucket", text("inks.open-bucket")), pressOf("inks.mix", text("inks.mix")),
                        pressOf("inks.new-family", text("inks.new-family")),
                        pressOf("inks.new-cloth", text("inks.new-cloth"))};
    page.back = pressOf("inks.back", text("inks.back"));
    page.detailOnly = m_form || !m_chosen.empty();
    if (m_form) {
        page.title = toQString(m_form->title(m_needs.speech()));
        page.blocks = m_form->blocks(m_needs.speech());
        page.actions = {pressOf("inks.save", text("inks.save"), true), pressOf("inks.back", text("inks.leave"))};
    } else {
        addChosen(page);
    }
    return page;
}

void InksPlace::addList(SheetPageState& page) const {
    const auto add = [&](const std::string& id, const std::string& title, const std::string& detail,
                         const std::string& value) {
        auto row = factRow(title, value, detail);
        row.id = toQString(id);
        row.chosen = isChosen(id);
        page.list.append(row);
    };
    const auto& figures = m_needs.speech().figures;
    if (!m_buckets.empty()) {
        page.list.append(headingRow(text("inks.buckets")));
    }
    for (const auto& bucket : m_buckets) {
        const auto number = std::to_string(bucket.number);
        add(std::string{kBucket} + number, text("inks.bucket-row", {{"bucket", number}, {"name", bucket.name}}),
            bucket.colour, bucket.batch);
    }
    if (!m_families.empty()) {
        page.list.append(headingRow(text("inks.families")));
    }
    for (const auto& family : m_families) {
        add(std::string{kFamily} + family.name, family.name,
            text("inks.row-family", {{"chemistry", wording::word(family.chemistry, m_needs.speech())},
                                     {"revision", std::to_string(family.revision)}}),
            figures.temperature(family.cure.temperature()));
    }
    if (!m_fabrics.empty()) {
        page.list.append(headingRow(text("inks.cloths")));
    }
    for (const auto& fabric : m_fabrics) {
        add(std::string{kCloth} + fabric.name, fabric.name,
            fabric.hardCeiling
                ? text("inks.row-ceiling", {{"ceiling", figures.temperature(fabric.hardCeiling->temperature())}})
                : text("inks.row-no-ceiling"),
            {});
    }
}

void InksPlace::addChosen(SheetPageState& page) const {
    const auto& speech = m_needs.speech();
    if (const auto* family = std::get_if<Families>(&m_shown)) {
        page.title = toQString(family->back().name);
        page.blocks = familyBlocks(*family, speech);
        page.actions = {pressOf("inks.revise", text("inks.revise"), true)};
    } else if (const auto* fabric = std::get_if<Fabrics>(&m_shown)) {
        page.title = toQString(fabric->back().name);
        page.blocks = fabricBlocks(*fabric, speech);
        page.actions = {pressOf("inks.revise", text("inks.revise"), true)};
    } else if (const auto* shown = std::get_if<ShownBucket>(&m_shown)) {
        auto bucket = *shown;
        const auto wall = m_needs.clock->wall(); // pot life runs on while it is looked at
        bucket.now = wall.millisecondsSinceEpoch;
        bucket.today = drivers::localDay(wall);
        const auto& file = bucket.tree.bucket;
        page.title =
            toQString(text(file.colour.empty() ? "inks.bucket-title" : "inks.bucket-title-colour",
                           {{"bucket", std::to_string(file.number)}, {"name", file.name}, {"colour", file.colour}}));
        page.blocks = bucketBlocks(bucket, speech);
        page.actions = {pressOf("inks.label", text("inks.label"), true)};
        if (!file.closed) {
            page.actions.append(pressOf("inks.empty", text("inks.empty")));
            page.actions.append(pressOf("inks.thrown-away", text("inks.thrown-away")));
            page.actions.append(pressOf("inks.mislabelled", text("inks.mislabelled")));
        }
    } else {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("inks.pick")));
    }
}

bool InksPlace::act(const std::string& id) {
    if (id == "inks.back") {
        if (m_form) {
            m_form.reset();
        } else {
            m_chosen.clear();
            m_shown = std::monostate{};
        }
        return true;
    }
    if (id == "inks.save" && m_form) {
        save();
        return true;
    }
    if (m_form && m_form->act(id)) {
        return true;
    }
    if (choose(id)) {
        m_form.reset();
        return true;
    }
    return startForm(id) || actOnBucket(id);
}

bool InksPlace::startForm(const std::string& id) {
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
    } else {
        return false;
    }
    return true;
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
    if (shown == nullptr || m_form) {
        return false;
    }
    const auto& bucket = shown->tree.bucket;
    if (id == "inks.label") {
        m_needs.print({PrintWish::What::bucketLabel, bucket.number});
        return true;
    }
    const auto end = id == "inks.empty"         ? std::optional{records::BucketEnd::empty}
                     : id == "inks.thrown-away" ? std::optional{records::BucketEnd::thrownAway}
                     : id == "inks.mislabelled" ? std::optional{records::BucketEnd::mislabelled}
                                                : std::nullopt;
    if (!end) {
        return false;
    }
    if (!bucket.closed) {
        keep(records::BucketClosed{bucket.id, *end}, m_chosen);
    }
    return true;
}

void InksPlace::save() {
    auto record = m_form->record();
    if (!record) {
        return;
    }
    std::string then;
    if (const auto* family = std::get_if<records::FamilyRecord>(&*record)) {
        then = std::string{kFamily} + family->name;
    } else if (const auto* fabric = std::get_if<records::FabricRecord>(&*record)) {
        then = std::string{kCloth} + fabric->name;
    } else if (auto* mix = std::get_if<records::MixMade>(&*record)) {
        mix->bucket = m_needs.newId();
        then = std::string{kBucket} + std::to_string(mix->number);
    } else if (auto* pail = std::get_if<records::BucketOpened>(&*record)) {
        if (!took(records::nextNumber(m_needs.book->reader(), records::Numbered::bucket), pail->number)) {
            return;
        }
        pail->bucket = m_needs.newId();
        then = std::string{kBucket} + std::to_string(pail->number);
    }
    if (!m_form->isSigned()) {
        keep(std::move(*record), then);
        return;
    }
    m_needs.sign(shop::Right::reviseInks,
                 [this, made = std::move(*record), then](std::int64_t person) { keep(made, then, person); });
}

void InksPlace::keep(records::Record record, const std::string& thenChoose, std::int64_t person) {
    std::vector<records::Record> list;
    list.push_back(std::move(record));
    m_needs.keep({std::move(list), person}, [this, thenChoose](const std::optional<ledger::Failure>& failure) {
        if (failure) { // a form stays as it was typed
            failed(*failure);
            return;
        }
        m_form.reset();
        m_chosen = thenChoose;
        reload();
    });
}

bool InksPlace::enter(const std::string& field, const std::string& typed) {
    return m_form && m_form->enter(field, typed);
}

bool InksPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (code.kind != drivers::TicketKind::bucket) {
        return false;
    }
    const auto number = static_cast<std::int64_t>(code.number);
    if (onScreen && m_form && m_form->addBucket(number)) {
        return true;
    }
    if (!onScreen) {
        reload();
    }
    m_form.reset();
    m_chosen.clear(); // an unknown bucket must not leave another one's answer on the screen
    m_shown = std::monostate{};
    chooseBucket(number);
    return true;
}

} // namespace holdfast::kiosk::screens
