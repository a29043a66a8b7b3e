#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/entry.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::ledger;

// FIPS 180-4 example values, NIST "SHA256.pdf" (csrc.nist.gov/projects/cryptographic-standards-and-guidelines/
// example-values): one block and two blocks; the empty message from NIST CAVP SHA256ShortMsg.rsp, Len = 0.
TEST_CASE("SHA-256 gives the published digests", "[ledger][digest]") {
    CHECK(toHex(sha256(std::string_view{"abc"})) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(toHex(sha256(std::string_view{"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"})) ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(toHex(sha256(std::string_view{})) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("a hasher fed in pieces gives the digest of the whole", "[ledger][digest]") {
    Hasher hasher;
    hasher.add(std::string_view{"a"});
    Hasher copy = hasher;
    hasher.add(std::string_view{"bc"});
    copy.add(std::string_view{"xx"});
    CHECK(hasher.finish() == sha256(std::string_view{"abc"}));
    CHECK(copy.finish() == sha256(std::string_view{"axx"}));
}

TEST_CASE("hexadecimal digests read back, and nothing else is one", "[ledger][digest]") {
    const Digest digest = sha256(std::string_view{"abc"});
    CHECK(fromHex(toHex(digest)) == digest);
    CHECK(fromHex("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD") == digest);
    const std::string text = toHex(digest);
    CHECK_FALSE(fromHex(text.substr(1)));
    CHECK_FALSE(fromHex(text + "0"));
    CHECK_FALSE(fromHex("g" + text.substr(1)));
    CHECK_FALSE(fromHex(""));
}

// Expected values from Python 3.11 hashlib and struct, after the format in kiosk/ledger/README.md:
//   i = lambda v: struct.pack('<qq', 8, v); t = lambda s: struct.pack('<q', len(s)) + s
//   sha256(previous + i(sequence) + t(id) + t(kiosk) + i(wall) + i(offset) + i(person) + t(kind) + i(version) +
//   t(body))
TEST_CASE("the chain's hash is the one that the format describes", "[ledger][chain]") {
    Entry first;
    first.sequence = 1;
    first.id = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
    first.kiosk = "kiosk-1";
    first.wallMilliseconds = 1645557742000;
    first.utcOffsetMinutes = -300;
    first.person = 7;
    first.kind = "lot.opened";
    first.version = 1;
    first.body = R"({"a":1})";
    const Digest head = chainHash(Digest{}, first);
    CHECK(toHex(head) == "6c29d4ad3e2eee3ed1811637f39319b687f4fa00b4f6b1dcc4d834d54009e232");

    Entry second = first;
    second.sequence = 2;
    second.id = "017f22e2-79b0-7cc3-98c4-dc0c0c073990";
    second.wallMilliseconds = 1645557742001;
    second.person = 0;
    second.kind = "lot.closed";
    second.version = 2;
    second.body = "{}";
    CHECK(toHex(chainHash(head, second)) == "7c24a229055490d6695c52a2667e8eb516c730970200e6fec3e8b8df31d69c72");
}

TEST_CASE("every column, and where one ends, changes the chain's hash", "[ledger][chain]") {
    Entry entry;
    entry.sequence = 1;
    entry.id = "ab";
    entry.kiosk = "c";
    entry.kind = "k";
    const Digest plain = chainHash(Digest{}, entry);
    const auto changed = [&](auto&& change) {
        Entry other = entry;
        change(other);
        return chainHash(Digest{}, other) != plain;
    };
    CHECK(changed([](Entry& e) { e.sequence = 2; }));
    CHECK(changed([](Entry& e) { e.id = "a", e.kiosk = "bc"; }));
    CHECK(changed([](Entry& e) { e.wallMilliseconds = 1; }));
    CHECK(changed([](Entry& e) { e.utcOffsetMinutes = 1; }));
    CHECK(changed([](Entry& e) { e.person = 1; }));
    CHECK(changed([](Entry& e) { e.kind = "l"; }));
    CHECK(changed([](Entry& e) { e.version = 2; }));
    CHECK(changed([](Entry& e) { e.body = "{}"; }));
    CHECK(chainHash(plain, entry) != plain);
    Entry other = entry;
    other.hash = plain;
    CHECK(chainHash(Digest{}, other) == plain);
}
