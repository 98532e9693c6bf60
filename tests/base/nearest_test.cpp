#include "base/nearest.hpp"

#include <gtest/gtest.h>

namespace loopwright::base {

TEST(Nearest, FindsTheWordThatWasMeant) {
    const std::vector<std::string> keys{"outline", "sides", "size", "size_is", "turns", "turn_spacing"};
    EXPECT_EQ(nearest("outlien", keys), "outline"); // neighbours exchanged
    EXPECT_EQ(nearest("Turns", keys), "turns");
    EXPECT_EQ(nearest("turnspacing", keys), "turn_spacing");
    EXPECT_EQ(nearest("sizes", keys), "sides"); // one letter away, and named before "size"
    EXPECT_EQ(nearest("colour", keys), "");
    EXPECT_EQ(nearest("", keys), "");
    EXPECT_EQ(nearest("anything", {}), "");
    EXPECT_EQ(nearest(std::string(100000, 'a'), keys), "");
}

TEST(Listed, ReadsAsASentence) {
    EXPECT_EQ(listed({"a", "b", "c"}), "a, b or c");
    EXPECT_EQ(listed({"a", "b"}), "a or b");
    EXPECT_EQ(listed({"a"}), "a");
    EXPECT_EQ(listed({}), "");
}

} // namespace loopwright::base
