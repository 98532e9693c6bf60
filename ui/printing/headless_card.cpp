#include "printing/headless_card.hpp"

#include "base/error.hpp"
#include "document/design_file.hpp"
#include "printing/card_sheet.hpp"
#include "survey/card.hpp"
#include "survey/keying.hpp"
#include "survey/site_voltage.hpp"
#include "units/text.hpp"

#include <QApplication>
#include <QFileInfo>

#include <cstdio>
#include <filesystem>
#include <map>

namespace loopwright::printing {

namespace {

struct CardArguments {
    std::map<QString, QString> values; ///< "--paper": its value
    QString file;
    bool pocket = false, understood = true;
    [[nodiscard]] QString value(const char* option) const {
        const auto found = values.find(QLatin1String(option));
        return found == values.end() ? QString() : found->second;
    }
};

bool takes_value(const QString& word) {
    for (const char* option : {"--card", "--paper", "--region", "--vswr", "--power"}) {
        if (word == QLatin1String(option)) {
            return true;
        }
    }
    return false;
}

CardArguments read_card_arguments(int argc, char** argv) {
    CardArguments all;
    for (int i = 1; i < argc; ++i) {
        const QString word = QString::fromLocal8Bit(argv[i]);
        if (takes_value(word)) {
            all.understood = all.understood && i + 1 < argc;
            all.values[word] = i + 1 < argc ? QString::fromLocal8Bit(argv[++i]) : QString();
        } else if (word == QLatin1String("--pocket")) {
            all.pocket = true;
        } else if (word.startsWith(QLatin1Char('-')) || !all.file.isEmpty()) {
            all.understood = false;
        } else {
            all.file = word;
        }
    }
    const QString paper = all.value("--paper");
    all.understood = all.understood && !all.file.isEmpty() && !all.value("--card").isEmpty() &&
                     (paper.isEmpty() || paper == QLatin1String("a4") || paper == QLatin1String("letter"));
    return all;
}

survey::CardRequest request_of(const CardArguments& arguments) {
    survey::CardRequest request;
    request.design = document::load_design(std::filesystem::path(arguments.file.toStdString()));
    if (const QString region = arguments.value("--region"); !region.isEmpty()) {
        request.design.station.region = region.toInt(); // anything else is refused as a region
    }
    if (const QString vswr = arguments.value("--vswr"); !vswr.isEmpty()) {
        request.vswr_limit = units::parse_si(vswr.toStdString(), units::Dimension::number, "--vswr");
    }
    if (const QString power = arguments.value("--power"); !power.isEmpty()) {
        request.design.station.power = units::parse_typed<units::Power>(power.toStdString(), "--power");
    }
    return request;
}

void write_card(const CardArguments& arguments) {
    const survey::CardRequest request = request_of(arguments);
    survey::KeyingRequest before;
    before.design = request.design;
    const auto keying = std::make_shared<const survey::Keying>(survey::keying(before));
    CardSheetData data{
        std::make_shared<const survey::Card>(survey::with_keying(survey::card(request), *keying)), keying,
        QFileInfo(arguments.file).fileName()};
    data.pocket = arguments.pocket;
    const QString paper = arguments.value("--paper");
    const bool letter = paper.isEmpty() ? prefers_letter() : paper == QLatin1String("letter");
    const QString out = arguments.value("--card");
    if (!write_paper_pdf(out, paper_of(data), letter)) {
        throw base::InputError::sentence("--card", out.toStdString() + " cannot be written");
    }
}

} // namespace

std::optional<int> run_headless_card(int argc, char** argv) {
    const CardArguments arguments = read_card_arguments(argc, argv);
    if (arguments.values.find(QStringLiteral("--card")) == arguments.values.end()) {
        return std::nullopt;
    }
    if (!arguments.understood) {
        std::fputs(
            "Usage: loopwright --card OUT.pdf FILE [--paper a4|letter] [--pocket] [--region N] [--vswr S] "
            "[--power P]\n",
            stderr);
        return 2;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    try {
        write_card(arguments);
    } catch (const base::InputError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
    return 0;
}

} // namespace loopwright::printing
