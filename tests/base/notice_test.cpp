#include "base/error.hpp"
#include "base/notice.hpp"

#include <gtest/gtest.h>

namespace loopwright::base {

TEST(Notices, KeepTheWorseOfTwoWithOneCode) {
    Notices notices;
    notices.add({"loss_class", Severity::information, "mild", 1.0});
    notices.add({"loss_class", Severity::caution, "worse", 0.5});
    notices.add({"loss_class", Severity::information, "mild again", 9.0});
    ASSERT_EQ(notices.all().size(), 1U);
    EXPECT_EQ(notices.all().front().text, "worse");
}

TEST(Notices, AreListedWorstFirst) {
    Notices notices;
    notices.add({"a", Severity::information, "a", 0});
    notices.add({"b", Severity::hazard, "b", 0});
    notices.add({"c", Severity::caution, "c", 0});
    const auto sorted = notices.worst_first();
    EXPECT_EQ(sorted.at(0).code, "b");
    EXPECT_EQ(sorted.at(1).code, "c");
    EXPECT_EQ(sorted.at(2).code, "a");
}

TEST(InputError, NamesFieldValueAndWhatIsAccepted) {
    const InputError error("loop.size", "-1 m", "a length from 0.05 m to 30 m");
    EXPECT_STREQ(error.what(), "loop.size: '-1 m' is not accepted; a length from 0.05 m to 30 m");
    EXPECT_STREQ(error.at("my.loop", 7).what(),
                 "my.loop:7: loop.size: '-1 m' is not accepted; a length from 0.05 m to 30 m");
}

} // namespace loopwright::base
