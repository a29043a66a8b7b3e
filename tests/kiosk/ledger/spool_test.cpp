#include "kiosk/ledger/spool.hpp"

#include "tests/kiosk/ledger/fixture.hpp"

#include <array>
#include <csignal>
#include <fstream>
#include <sys/resource.h>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

const Bytes header{'{', '"', 'l', 'o', 't', '"', ':', '1', '}'};

std::vector<TracePoint> pointsFrom(std::int64_t first, std::int64_t count) {
    std::vector<TracePoint> points;
    for (std::int64_t i = first; i < first + count; ++i) {
        points.push_back({i * 100'000, 250 + i, static_cast<std::uint8_t>(i % 4)});
    }
    return points;
}

Bytes spooledContent(const std::filesystem::path& file) {
    std::ifstream in{file, std::ios::binary};
    return Bytes(std::istreambuf_iterator<char>{in}, {});
}

void write(const std::filesystem::path& file, std::span<const std::uint8_t> bytes) {
    std::ofstream out{file, std::ios::binary | std::ios::trunc};
    out.write(reinterpret_cast<const char*>(bytes.data()), static_cast<std::streamsize>(bytes.size()));
}

/// Every file of this process may grow no further than so many bytes, for a time.
class LargestFile {
public:
    explicit LargestFile(rlim_t bytes) {
        ::getrlimit(RLIMIT_FSIZE, &m_before);
        m_handler = std::signal(SIGXFSZ, SIG_IGN);
        const rlimit now{bytes, m_before.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &now);
    }
    ~LargestFile() {
        ::setrlimit(RLIMIT_FSIZE, &m_before);
        std::signal(SIGXFSZ, m_handler);
    }
    LargestFile(const LargestFile&) = delete;
    LargestFile& operator=(const LargestFile&) = delete;

private:
    rlimit m_before{};
    void (*m_handler)(int) = nullptr;
};

} // namespace

TEST_CASE("a spool reads back its header and every sample", "[ledger][spool]") {
    const TemporaryFolder folder;
    auto spool = must(Spool::create(folder.path(), "ride-1", header, 0));
    must(spool.append(pointsFrom(0, 10), 500'000));
    must(spool.append({}, 900'000));
    must(spool.append(pointsFrom(10, 9000), 2'000'000));
    CHECK(spool.fileName() == "ride-1.spool");
    CHECK(must(Spool::findLeftOver(folder.path())) == std::vector<std::string>{"ride-1.spool"});
    const auto contents = must(Spool::read(folder.path() / spool.fileName()));
    CHECK(contents.header == header);
    CHECK(contents.points == pointsFrom(0, 9010));
    CHECK(contents.tornBytes == 0);
    must(spool.discard());
    CHECK(must(Spool::findLeftOver(folder.path())).empty());
    CHECK(outcome(spool.append(pointsFrom(0, 1), 0)) == "inputOutput");
}

TEST_CASE("a spool torn anywhere gives the samples up to its last whole frame", "[ledger][spool]") {
    const TemporaryFolder folder;
    auto spool = must(Spool::create(folder.path(), "ride", header, 0));
    const auto file = folder.path() / spool.fileName();
    std::vector<std::size_t> ends{spooledContent(file).size()};
    for (std::int64_t frame = 0; frame < 4; ++frame) {
        must(spool.append(pointsFrom(frame * 3, 3), frame));
        ends.push_back(spooledContent(file).size());
    }
    const Bytes whole = spooledContent(file);
    const auto torn = folder.path() / "torn.spool";
    for (std::size_t length = 0; length <= whole.size(); ++length) {
        write(torn, std::span{whole}.first(length));
        const auto read = Spool::read(torn);
        if (length < ends.front()) {
            REQUIRE(outcome(read) == "damaged");
            continue;
        }
        std::size_t frames = 0;
        while (frames + 1 < ends.size() && ends[frames + 1] <= length) {
            ++frames;
        }
        REQUIRE(must(Spool::read(torn)).points == pointsFrom(0, static_cast<std::int64_t>(frames) * 3));
        REQUIRE(read->tornBytes == length - ends[frames]);
    }
}

TEST_CASE("an altered byte in a spool ends it there", "[ledger][spool]") {
    const TemporaryFolder folder;
    auto spool = must(Spool::create(folder.path(), "ride", header, 0));
    const auto file = folder.path() / spool.fileName();
    must(spool.append(pointsFrom(0, 3), 0));
    const std::size_t firstEnd = spooledContent(file).size();
    must(spool.append(pointsFrom(3, 3), 0));
    must(spool.append(pointsFrom(6, 3), 0));
    const Bytes whole = spooledContent(file);
    for (std::size_t at = firstEnd; at < firstEnd + (whole.size() - firstEnd) / 2; ++at) {
        Bytes altered = whole;
        altered[at] ^= 0x10;
        write(file, altered);
        REQUIRE(must(Spool::read(file)).points == pointsFrom(0, 3));
    }
}

TEST_CASE("a frame moved to another place does not count", "[ledger][spool]") {
    const TemporaryFolder folder;
    auto spool = must(Spool::create(folder.path(), "ride", header, 0));
    const auto file = folder.path() / spool.fileName();
    const std::size_t start = spooledContent(file).size();
    must(spool.append(pointsFrom(0, 3), 0));
    Bytes doubled = spooledContent(file);
    const Bytes frame(doubled.begin() + static_cast<std::ptrdiff_t>(start), doubled.end());
    doubled.insert(doubled.end(), frame.begin(), frame.end());
    write(file, doubled);
    const auto contents = must(Spool::read(file));
    CHECK(contents.points == pointsFrom(0, 3));
    CHECK(contents.tornBytes == frame.size());
}

TEST_CASE("what is no spool is not read as one", "[ledger][spool]") {
    const TemporaryFolder folder;
    write(folder.path() / "empty.spool", Bytes{});
    CHECK(outcome(Spool::read(folder.path() / "empty.spool")) == "damaged");
    const Bytes noise(4096, 0x5a);
    write(folder.path() / "noise.spool", noise);
    CHECK(outcome(Spool::read(folder.path() / "noise.spool")) == "damaged");
    const Bytes later{'H', 'F', 'S', 'P', 'O', 'O', 'L', '2', 0, 0, 0, 0};
    write(folder.path() / "later.spool", later);
    CHECK(outcome(Spool::read(folder.path() / "later.spool")) == "newerBook");
    CHECK(outcome(Spool::read(folder.path() / "none.spool")) == "notFound");
    CHECK(outcome(Spool::findLeftOver(folder.path() / "none")) == "folderMissing");
}

TEST_CASE("a spool takes no name that is taken or leaves the folder", "[ledger][spool]") {
    const TemporaryFolder folder;
    must(Spool::create(folder.path(), "ride", header, 0));
    CHECK(outcome(Spool::create(folder.path(), "ride", header, 0)) == "refused");
    CHECK(outcome(Spool::create(folder.path(), "../ride", header, 0)) == "refused");
    CHECK(outcome(Spool::create(folder.path(), "", header, 0)) == "refused");
    CHECK(outcome(Spool::create(folder.path() / "none", "ride", header, 0)) == "folderMissing");
    CHECK_FALSE(isSpoolName("ride.spool.new"));
    CHECK_FALSE(isSpoolName(".spool"));
    CHECK_FALSE(isSpoolName("a/b.spool"));
}

TEST_CASE("a full disk keeps the whole frames, and the ride goes on when there is room", "[ledger][spool]") {
    const TemporaryFolder folder;
    auto spool = must(Spool::create(folder.path(), "ride", header, 0));
    const auto file = folder.path() / spool.fileName();
    must(spool.append(pointsFrom(0, 5), 0));
    {
        const LargestFile limit{spooledContent(file).size() + 20}; // in the middle of the next frame
        CHECK(outcome(spool.append(pointsFrom(5, 5), 0)) == "diskFull");
    }
    CHECK(must(Spool::read(file)).tornBytes == 0);
    must(spool.append(pointsFrom(5, 5), 0));
    CHECK(must(Spool::read(file)).points == pointsFrom(0, 10));
}

TEST_CASE("a kiosk killed in the middle of a ride leaves every sample it was told of", "[ledger][spool][kill]") {
    const TemporaryFolder folder;
    std::array<int, 2> pipe{};
    REQUIRE(::pipe(pipe.data()) == 0);
    const pid_t child = ::fork();
    if (child == 0) {
        auto spool = Spool::create(folder.path(), "ride", header, 0);
        for (std::int64_t i = 0; spool; ++i) {
            if (!spool->append(pointsFrom(i, 1), i * 100'000) || ::write(pipe[1], &i, sizeof i) != sizeof i) {
                break;
            }
        }
        ::_exit(1);
    }
    ::close(pipe[1]);
    std::int64_t acknowledged = -1;
    while (acknowledged < 300 && ::read(pipe[0], &acknowledged, sizeof acknowledged) == sizeof acknowledged) {
    }
    ::kill(child, SIGKILL);
    while (::read(pipe[0], &acknowledged, sizeof acknowledged) == sizeof acknowledged) {
    }
    ::close(pipe[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    REQUIRE(WIFSIGNALED(status));
    const auto left = must(Spool::findLeftOver(folder.path()));
    REQUIRE(left.size() == 1);
    const auto contents = must(Spool::read(folder.path() / left.front()));
    const auto count = static_cast<std::int64_t>(contents.points.size());
    CHECK(count > acknowledged);
    CHECK(contents.points == pointsFrom(0, count));
    CHECK(contents.header == header);
}
