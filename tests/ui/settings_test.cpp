#include "settings/settings.hpp"

#include "session/focus.hpp"
#include "settings/usable_vswr.hpp"

#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <cmath>
#include <gtest/gtest.h>

using namespace loopwright;

namespace {

TEST(SettingsTest, AreKeptBetweenTwoStarts) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("settings.ini"));
    {
        settings::Settings settings(file);
        const QSignalSpy spy(&settings, &settings::Settings::unit_system_changed);
        EXPECT_FALSE(settings.caution_read());
        settings.set_unit_system(units::UnitSystem::imperial);
        settings.set_unit_system(units::UnitSystem::imperial);
        EXPECT_EQ(spy.count(), 1);
        settings.set_caution_read(true);
        settings.set_unfolded(QStringLiteral("site"), true);
    }
    const settings::Settings again(file);
    EXPECT_EQ(again.unit_system(), units::UnitSystem::imperial);
    EXPECT_TRUE(again.caution_read());
    EXPECT_TRUE(again.unfolded(QStringLiteral("site"), false));
    EXPECT_FALSE(again.unfolded(QStringLiteral("loop"), false));
}

TEST(SettingsTest, TheDipoleIsKeptAndNonsenseIsNot) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("settings.ini"));
    const settings::DipoleChoice chosen{false, {units::metres(7.5), true, units::degrees(40)}};
    {
        settings::Settings settings(file);
        EXPECT_EQ(settings.dipole(), settings::DipoleChoice{});
        settings.set_dipole(chosen);
    }
    EXPECT_EQ(settings::Settings(file).dipole(), chosen);
    QFile spoilt(file);
    ASSERT_TRUE(spoilt.open(QIODevice::WriteOnly));
    spoilt.write("[dipole]\nheight_m=nan\ndirection_rad=1e9\nvertical=true\n");
    spoilt.close();
    const settings::DipoleChoice read = settings::Settings(file).dipole();
    EXPECT_EQ(read.dipole.height, loop::ComparisonDipole{}.height);
    EXPECT_EQ(read.dipole.azimuth, loop::ComparisonDipole{}.azimuth);
    EXPECT_TRUE(read.dipole.vertical);
}

TEST(SettingsTest, TheUsableVswrIsKeptAndNonsenseIsNot) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("settings.ini"));
    {
        settings::Settings settings(file);
        EXPECT_EQ(settings::usable_vswr(settings), 2.0);
        settings::set_usable_vswr(settings, 2.75);
        for (const double none : {1.0, 0.5, 11.0, -3.0, std::nan("")}) {
            settings::set_usable_vswr(settings, none);
        }
    }
    settings::Settings again(file);
    EXPECT_EQ(settings::usable_vswr(again), 2.75);
    again.set_window_state(QStringLiteral("retune_vswr"), QByteArray("12"));
    EXPECT_EQ(settings::usable_vswr(again), 2.0);
}

TEST(SettingsTest, WhereADialStandsIsKeptForTheLastTwentyFiles) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("settings.ini"));
    {
        settings::Settings settings(file);
        for (int i = 0; i < 25; ++i) {
            settings.set_dial_left_at(QStringLiteral("/a folder/%1 loop.loop").arg(i), 10.25 + i);
        }
        settings.set_dial_left_at(QStringLiteral("/a folder/24 loop.loop"), std::nullopt);
        settings.set_dial_left_at(QString(), 3.0);
    }
    const settings::Settings again(file);
    EXPECT_EQ(again.dial_left_at(QStringLiteral("/a folder/23 loop.loop")), 33.25);
    EXPECT_EQ(again.dial_left_at(QStringLiteral("/a folder/5 loop.loop")), 15.25);
    EXPECT_FALSE(again.dial_left_at(QStringLiteral("/a folder/4 loop.loop"))) << "more than twenty";
    EXPECT_FALSE(again.dial_left_at(QStringLiteral("/a folder/24 loop.loop")));
}

TEST(SettingsTest, RecentFilesAreNewestFirstAndExist) {
    const QTemporaryDir folder;
    settings::Settings settings(folder.filePath(QStringLiteral("settings.ini")));
    QStringList made;
    for (int i = 0; i < 12; ++i) {
        QFile file(folder.filePath(QStringLiteral("%1.loop").arg(i)));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        made << file.fileName();
        settings.add_recent_file(file.fileName());
    }
    settings.add_recent_file(made[5]);
    EXPECT_EQ(settings.recent_files().size(), 10);
    EXPECT_EQ(settings.recent_files().front(), made[5]);
    EXPECT_EQ(settings.recent_files().count(made[5]), 1);
    QFile::remove(made[5]);
    EXPECT_EQ(settings.recent_files().front(), made[11]);
}

TEST(FocusTest, FindsTheBandOfAFrequency) {
    session::Focus focus;
    const QSignalSpy spy(&focus, &session::Focus::changed);
    focus.set_frequency(units::megahertz(14.2));
    EXPECT_EQ(focus.band(), QStringLiteral("20m"));
    focus.set_frequency(units::megahertz(12.0));
    EXPECT_TRUE(focus.band().isEmpty());
    focus.set_band(QStringLiteral("30m"));
    EXPECT_GT(focus.frequency(), units::megahertz(10.1)); // Radio Regulations: 10.1 to 10.15 MHz
    EXPECT_LT(focus.frequency(), units::megahertz(10.15));
    EXPECT_EQ(spy.count(), 3);
    focus.set_band(QStringLiteral("no such band"));
    EXPECT_EQ(spy.count(), 3);
}

TEST(SettingsTest, TheRadioIsKeptAndNonsenseIsNot) {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("settings.ini"));
    radio::Connection chosen;
    chosen.way = radio::Way::serial;
    chosen.host = "shack.example";
    chosen.port = 4540;
    chosen.driver = 1035;
    chosen.device = "/dev/ttyUSB1";
    chosen.speed_baud = 38400;
    {
        settings::Settings settings(file);
        EXPECT_EQ(settings.radio(), radio::Connection{});
        settings.set_radio(chosen);
    }
    EXPECT_EQ(settings::Settings(file).radio(), chosen);
    QFile spoilt(file);
    ASSERT_TRUE(spoilt.open(QIODevice::WriteOnly));
    spoilt.write("[radio]\nserial=false\nhost=a b\nport=99999\n");
    spoilt.close();
    EXPECT_EQ(settings::Settings(file).radio(), radio::Connection{});
}

} // namespace
