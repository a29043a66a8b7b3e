#include "kiosk/screens/sheet/sheet_page_model.hpp"

#include <QSignalSpy>
#include <catch2/catch.hpp>

#include <random>

using namespace holdfast::kiosk::screens;

namespace {

QList<SheetRow> rowsOf(const std::vector<int>& numbers) {
    QList<SheetRow> rows;
    for (const int number : numbers) {
        rows.append(SheetRow{.id = QString::number(number), .title = QStringLiteral("row %1").arg(number)});
    }
    return rows;
}

QList<SheetRow> treeOf(const std::vector<int>& depths) {
    QList<SheetRow> rows;
    for (const int depth : depths) {
        rows.append(SheetRow{.indent = depth});
    }
    return rows;
}

/// What a view holds that only hears the model's signals.
struct Listener {
    explicit Listener(QAbstractItemModel& listened) : model{listened} {
        QObject::connect(&model, &QAbstractItemModel::rowsInserted, &model,
                         [this](const QModelIndex&, int first, int last) {
                             for (int i = first; i <= last; ++i) {
                                 held.insert(i, read(i));
                             }
                         });
        QObject::connect(&model, &QAbstractItemModel::rowsRemoved, &model,
                         [this](const QModelIndex&, int first, int last) { held.remove(first, last - first + 1); });
        QObject::connect(&model, &QAbstractItemModel::dataChanged, &model,
                         [this](const QModelIndex& index) { held[index.row()] = read(index.row()); });
    }
    [[nodiscard]] SheetRow read(int row) const {
        return model.data(model.index(row, 0), Qt::UserRole).value<SheetRow>();
    }
    QAbstractItemModel& model;
    QList<SheetRow> held;
};

} // namespace

TEST_CASE("a view that hears only the changes holds what the model holds", "[screens][sheet]") {
    GadgetModel<SheetRow> model;
    Listener listener{model};
    std::mt19937 random{20419}; // fixed seed
    for (int round = 0; round < 400; ++round) {
        std::vector<int> numbers(std::uniform_int_distribution<std::size_t>{0, 12}(random));
        for (int& number : numbers) {
            number = std::uniform_int_distribution<int>{0, 4}(random);
        }
        model.set(rowsOf(numbers));
        REQUIRE(model.items() == rowsOf(numbers));
        REQUIRE(listener.held == model.items());
    }
}

TEST_CASE("a new row on top is one inserted row, and the same list again is nothing", "[screens][sheet]") {
    GadgetModel<SheetRow> model;
    model.set(rowsOf({3, 2, 1}));
    QSignalSpy inserted(&model, &QAbstractItemModel::rowsInserted);
    QSignalSpy changed(&model, &QAbstractItemModel::dataChanged);
    QSignalSpy removed(&model, &QAbstractItemModel::rowsRemoved);
    model.set(rowsOf({3, 2, 1}));
    REQUIRE(inserted.count() + changed.count() + removed.count() == 0);
    model.set(rowsOf({4, 3, 2, 1}));
    REQUIRE(inserted.count() == 1);
    REQUIRE(inserted.first().at(1).toInt() == 0);
    REQUIRE(changed.count() + removed.count() == 0);
}

TEST_CASE("the trunks of a tree go on as far as a sister follows", "[screens][sheet]") {
    // By hand: 0 / 1 / 2 / 2 / 1: the first 1 has a sister below its two children, the first 2 has one beside it.
    const SheetBlockModel tree{{.kind = SheetKinds::Rows, .rows = treeOf({0, 1, 2, 2, 1})}};
    REQUIRE(tree.trunks() == QList<int>{0, 0b01, 0b11, 0b01, 0b00});
    const SheetBlockModel apart{{.kind = SheetKinds::Rows, .rows = treeOf({0, 1, 0, 1})}};
    REQUIRE(apart.trunks() == QList<int>{0, 0, 0, 0});
    const SheetBlockModel hostile{{.kind = SheetKinds::Rows, .rows = treeOf({-3, 99, 2})}};
    REQUIRE(hostile.trunks().size() == 3);
}

TEST_CASE("a live figure keeps every block and tells only its own text", "[screens][sheet]") {
    SheetPageState state;
    state.blocks = {{.kind = SheetKinds::Figure, .text = QStringLiteral("32.4 °F")},
                    {.kind = SheetKinds::Facts, .rows = rowsOf({1, 2})}};
    SheetPageModel page;
    page.setState(state);
    auto* blocks = page.blocks();
    const auto blockAt = [&](int row) {
        return blocks->data(blocks->index(row, 0), Qt::UserRole).value<SheetBlockModel*>();
    };
    SheetBlockModel* figure = blockAt(0);
    SheetBlockModel* facts = blockAt(1);
    QSignalSpy moved(blocks, &QAbstractItemModel::dataChanged);
    QSignalSpy told(figure, &SheetBlockModel::textChanged);
    QSignalSpy rows(facts->rows(), &QAbstractItemModel::dataChanged);
    QSignalSpy framed(&page, &SheetPageModel::frameChanged);
    state.blocks[0].text = QStringLiteral("32.5 °F");
    page.setState(state);
    page.setState(state);
    REQUIRE(told.count() == 1);
    REQUIRE(moved.count() + rows.count() + framed.count() == 0);
    REQUIRE(blockAt(0) == figure);
    REQUIRE(figure->text() == "32.5 °F");
}

TEST_CASE("a block put between others leaves those in place", "[screens][sheet]") {
    SheetPageState state;
    state.blocks = {{.kind = SheetKinds::Lead}, {.kind = SheetKinds::Fields}};
    SheetPageModel page;
    page.setState(state);
    auto* blocks = page.blocks();
    const QVariant fields = blocks->data(blocks->index(1, 0), Qt::UserRole);
    state.blocks.insert(1, SheetBlock{.kind = SheetKinds::Note, .text = QStringLiteral("why")});
    page.setState(state);
    REQUIRE(blocks->rowCount() == 3);
    REQUIRE(blocks->data(blocks->index(2, 0), Qt::UserRole) == fields);
}

TEST_CASE("another chosen row is another thing to read, the same one is not", "[screens][sheet]") {
    SheetPageState state;
    state.list = rowsOf({2, 1});
    state.list[0].chosen = true;
    SheetPageModel page;
    page.setState(state);
    QSignalSpy replaced(&page, &SheetPageModel::detailReplaced);
    QSignalSpy choice(&page, &SheetPageModel::choiceReplaced);
    state.blocks = {{.kind = SheetKinds::Note, .text = QStringLiteral("one more")}};
    page.setState(state);
    state.list.prepend(SheetRow{.id = QStringLiteral("3")});
    page.setState(state);
    REQUIRE(replaced.count() + choice.count() == 0);
    REQUIRE(page.chosenIndex() == 1);
    state.list[1].chosen = false;
    state.list[2].chosen = true;
    page.setState(state);
    REQUIRE(replaced.count() == 1);
    REQUIRE(choice.count() == 1);
}
