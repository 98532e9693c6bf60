#include "printing/headless.hpp"

#include "base/error.hpp"
#include "base/version.hpp"
#include "charts/chart_picture.hpp"
#include "document/design_file.hpp"
#include "models/survey_charts.hpp"
#include "printing/card_sheet.hpp"
#include "printing/keying_sheet.hpp"
#include "printing/print_actions.hpp"
#include "printing/sheet.hpp"
#include "report/card.hpp"
#include "report/keying.hpp"
#include "report/table.hpp"
#include "report/tables.hpp"
#include "survey/site_voltage.hpp"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QLocale>

#include <cstdio>
#include <cstring>
#include <filesystem>

namespace loopwright::printing {

namespace {

constexpr int curve_points = 461;

[[noreturn]] void refuse(const QString& file) {
    throw base::InputError::sentence(
        "--write", file.toStdString() + " cannot be written; choose a folder that you may write to");
}

std::shared_ptr<const survey::Survey> computed(const design::Design& design) {
    survey::Request request;
    request.design = design;
    request.points = curve_points;
    return std::make_shared<const survey::Survey>(survey::run(request));
}

std::shared_ptr<const survey::Keying> keyed(const design::Design& design) {
    survey::KeyingRequest request;
    request.design = design;
    return std::make_shared<const survey::Keying>(survey::keying(request));
}

charts::Origin origin_of(const survey::Survey& survey, const QDate& date) {
    return {QString::fromStdString(survey.request.design.title),
            {},
            models::conditions(survey),
            QLocale().toString(date, QLocale::LongFormat),
            QStringLiteral("Loopwright %1").arg(QString::fromLatin1(base::version))};
}

/// The retune card as page, half page and table.
template <class Add>
void add_card(const WriteRequest& request, const std::shared_ptr<const survey::Keying>& keying,
              const Add& add) {
    CardSheetData data{
        std::make_shared<const survey::Card>(survey::with_keying(survey::card({request.design}), *keying)),
        keying, request.file, request.date};
    add(QStringLiteral("card.pdf"),
        [&](const QString& file) { return write_paper_pdf(file, paper_of(data), request.letter); });
    add(QStringLiteral("card.csv"),
        [&](const QString& file) { return write_text(file, report::to_csv(report::card_data(*data.card))); });
    data.pocket = true;
    add(QStringLiteral("card-pocket.pdf"),
        [&](const QString& file) { return write_paper_pdf(file, paper_of(data), request.letter); });
}

struct Arguments {
    QString folder, file;
    bool asked = false, letter = prefers_letter(), understood = true;
};

Arguments read_arguments(int argc, char** argv) {
    Arguments all;
    for (int i = 1; i < argc; ++i) {
        const QString word = QString::fromLocal8Bit(argv[i]);
        const bool last = i + 1 >= argc;
        if (word == QLatin1String("--write")) {
            all.asked = true;
            all.folder = last ? QString() : QString::fromLocal8Bit(argv[++i]);
        } else if (word == QLatin1String("--paper")) {
            const QString paper = last ? QString() : QString::fromLocal8Bit(argv[++i]).toLower();
            all.letter = paper == QLatin1String("letter");
            all.understood = all.understood && (all.letter || paper == QLatin1String("a4"));
        } else if (word.startsWith(QLatin1Char('-')) || !all.file.isEmpty()) {
            all.understood = false;
        } else {
            all.file = word;
        }
    }
    all.understood = all.understood && !all.folder.isEmpty() && !all.file.isEmpty();
    return all;
}

} // namespace

QStringList write_files(const WriteRequest& request) {
    const auto survey = computed(request.design);
    const QDir folder(request.folder);
    if (!folder.mkpath(QStringLiteral("."))) {
        refuse(request.folder);
    }
    QStringList written;
    const auto add = [&](const QString& name, const auto& write) {
        const QString file = folder.filePath(name);
        if (!write(file)) {
            refuse(file);
        }
        written << file;
    };
    const auto keying = keyed(request.design);
    SheetData sheet{survey, request.file, request.date};
    sheet.keying = keying;
    add(QStringLiteral("report.pdf"),
        [&](const QString& file) { return write_sheet_pdf(file, sheet, request.letter); });
    const charts::Origin origin = origin_of(*survey, request.date);
    for (const models::ChartContent& chart : models::survey_charts(*survey)) {
        for (const char* ending : {".png", ".svg"}) {
            add(chart.id + QLatin1String(ending),
                [&](const QString& file) { return charts::write_picture(file, chart, origin, {}); });
        }
    }
    add(QStringLiteral("bands.csv"),
        [&](const QString& file) { return write_text(file, report::to_csv(report::band_data(*survey))); });
    add(QStringLiteral("curve.csv"),
        [&](const QString& file) { return write_text(file, report::to_csv(report::sweep_data(*survey))); });
    const KeyingSheetData before{keying, planned_plot(*keying, units::UnitSystem::metric), request.file,
                                 request.date};
    add(QStringLiteral("keying.pdf"),
        [&](const QString& file) { return write_paper_pdf(file, paper_of(before), request.letter); });
    add(QStringLiteral("keying.csv"),
        [&](const QString& file) { return write_text(file, report::to_csv(report::keying_data(*keying))); });
    add_card(request, keying, add);
    return written;
}

std::optional<int> run_headless(int argc, char** argv) {
    const Arguments arguments = read_arguments(argc, argv);
    if (!arguments.asked) {
        return std::nullopt;
    }
    if (!arguments.understood) {
        std::fputs("Usage: loopwright --write DIR FILE [--paper a4|letter]\n", stderr);
        return 2;
    }
    // Drawing needs fonts but no display; a plug-in that wants one would stop the program without it.
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    try {
        const QFileInfo info(arguments.file);
        WriteRequest request;
        request.design = document::load_design(std::filesystem::path(arguments.file.toStdString()));
        request.file = info.fileName();
        request.folder = arguments.folder;
        request.letter = arguments.letter;
        write_files(request);
    } catch (const base::InputError& error) {
        std::fprintf(stderr, "%s\n", error.what());
        return 1;
    }
    return 0;
}

} // namespace loopwright::printing
