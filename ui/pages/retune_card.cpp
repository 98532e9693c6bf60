#include "pages/retune_card.hpp"

#include "inputs/entry.hpp"
#include "jobs/keying_job.hpp"
#include "models/card_table.hpp"
#include "pages/plain_table.hpp"
#include "settings/measures.hpp"
#include "settings/usable_vswr.hpp"
#include "survey/site_voltage.hpp"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace loopwright::pages {

namespace {
constexpr int vswr_px = 60, remarks_px = 160;
} // namespace

RetuneCard::RetuneCard(const Context& context, QWidget* parent)
    : QWidget(parent), context_(context), model_(new models::TextTableModel(this)),
      table_(new PlainTable(*model_, tr("Retune card"),
                            tr("One row a working frequency; picking one puts it in focus"), this)),
      state_(new QLabel(this)), later_(new QTimer(this)),
      vswr_(new inputs::Entry({units::Dimension::number}, "retune.vswr", this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(unit_px / 2);
    auto* row = new QHBoxLayout;
    state_->setWordWrap(true);
    state_->setObjectName(QStringLiteral("card.state"));
    row->addWidget(state_, 1);
    add_vswr(*row);
    const auto add = [&](const QString& text, const QString& tip, const char* name, auto signal) {
        auto* button = new QPushButton(text, this);
        button->setToolTip(tip);
        button->setObjectName(QLatin1String(name));
        connect(button, &QPushButton::clicked, this, signal);
        row->addWidget(button);
    };
    add(tr("&Print…"), tr("Print the card: one page"), "card.print", &RetuneCard::print_wanted);
    add(tr("Poc&ket…"), tr("Print the card on half a page, to be cut off"), "card.pocket",
        &RetuneCard::pocket_wanted);
    add(tr("Previe&w…"), tr("Look at the printed card first"), "card.preview", &RetuneCard::preview_wanted);
    add(tr("P&DF…"), tr("The card as a PDF of one page"), "card.pdf", &RetuneCard::pdf_wanted);
    add(tr("CS&V…"), tr("Every row of the card as a table for a spreadsheet"), "card.csv",
        &RetuneCard::table_export_wanted);
    column->addLayout(row);
    column->addWidget(table_, 1);
    table_->setObjectName(QStringLiteral("card.table"));
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->horizontalHeader()->setStretchLastSection(true);
    wrap_remarks();
    connect(&job_, &jobs::Job::started, this, [this] {
        failure_.clear();
        show_state();
    });
    connect(&job_, &jobs::Job::finished, this, &RetuneCard::show_card);
    connect(&context_.keying, &jobs::KeyingJob::updated, this, [this] {
        if (job_.result() && context_.keying.settled()) {
            show_card();
        }
    });
    connect(&job_, &jobs::Job::failed, this, [this](const QString& message) {
        failure_ = message;
        show_state();
    });
    connect(&context_.focus, &session::Focus::changed, this, &RetuneCard::follow_focus);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) {
                const auto& card = job_.result();
                if (!following_ && card && current.isValid()) {
                    context_.focus.set_frequency(
                        card->rows.at(static_cast<std::size_t>(current.row())).radio);
                }
            });
    show_state();
}

/// A remark is read in full at every width: its lines wrap, and the rows grow with them.
void RetuneCard::wrap_remarks() {
    table_->setWordWrap(true);
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::Fixed); // measured once, in fit_rows()
    table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn); // a width that does not depend on the heights
    later_->setSingleShot(true);                               // once for all columns of one change
    later_->setInterval(0);
    connect(table_->horizontalHeader(), &QHeaderView::sectionResized, later_, qOverload<>(&QTimer::start));
    connect(later_, &QTimer::timeout, this, &RetuneCard::fit_rows);
}

/// The remarks get the width that is left, and the rows the height of their lines.
void RetuneCard::fit_rows() {
    QHeaderView& header = *table_->horizontalHeader();
    const int last = header.count() - 1;
    if (last < 0) {
        return;
    }
    const int others = header.length() - header.sectionSize(last);
    const int room = std::max(remarks_px, table_->viewport()->width() - others);
    if (header.sectionSize(last) != room) {
        header.resizeSection(last, room); // the columns were made as wide as their longest line before
    }
    table_->resizeRowsToContents();
    later_->stop();
}

void RetuneCard::add_vswr(QHBoxLayout& row) {
    vswr_limit_ = settings::usable_vswr(context_.settings);
    auto* label = new QLabel(tr("&Usable up to VSWR"), this);
    inputs::QuantityField& field = vswr_->field();
    field.setObjectName(QStringLiteral("card.vswr"));
    field.set_value(vswr_limit_, {});
    vswr_->describe(tr("Usable up to VSWR"),
                    tr("How far off resonance the loop still counts as usable without retuning: the span of "
                       "the card and of the dial above. 2 is usual."));
    vswr_->setMaximumWidth(vswr_px);
    label->setBuddy(&field);
    label->setToolTip(field.toolTip());
    row.addWidget(label);
    row.addWidget(vswr_);
    connect(&field, &inputs::QuantityField::edited, this, &RetuneCard::set_vswr_limit);
}

void RetuneCard::set_vswr_limit(double limit, const QString& text) {
    if (!settings::is_usable_vswr(limit)) {
        vswr_->field().refuse(
            tr("Between %1 and %2.").arg(settings::least_usable_vswr).arg(settings::greatest_usable_vswr));
        return;
    }
    vswr_->field().set_value(limit, text);
    if (limit != vswr_limit_) {
        vswr_limit_ = limit;
        settings::set_usable_vswr(context_.settings, limit);
        Q_EMIT vswr_limit_changed();
    }
}

void RetuneCard::start() {
    survey::CardRequest request;
    request.design = context_.document.design();
    request.vswr_limit = vswr_limit_;
    job_.start(request);
}

std::shared_ptr<const survey::Card> RetuneCard::shown() const {
    const auto& card = job_.result();
    const auto& keying = context_.keying.result();
    if (!card || !context_.keying.settled() || !keying || keying->request.design != card->request.design) {
        return card;
    }
    return std::make_shared<const survey::Card>(survey::with_keying(*card, *keying));
}

void RetuneCard::show_card() {
    following_ = true; // a table that is filled anew picks nothing
    model_->set_table(models::card_table(*shown()));
    fit_rows();
    following_ = false;
    follow_focus();
    show_state();
}

void RetuneCard::follow_focus() {
    const auto& card = job_.result();
    if (!card || following_) {
        return;
    }
    const auto found = std::find_if(card->rows.begin(), card->rows.end(), [&](const survey::CardRow& row) {
        return row.radio == context_.focus.frequency();
    });
    following_ = true;
    const int now = table_->currentIndex().row();
    if (found == card->rows.end()) {
        table_->clearSelection();
        table_->setCurrentIndex({});
    } else if (const int row = static_cast<int>(found - card->rows.begin());
               now < 0 || card->rows.at(static_cast<std::size_t>(now)).radio != context_.focus.frequency()) {
        table_->selectRow(row);
        table_->scrollTo(model_->index(row, 0));
    }
    following_ = false;
}

/// What belongs to an older state is greyed until the new one is there.
void RetuneCard::show_state() {
    const bool stale = job_.stale();
    QPalette shades = palette();
    if (stale) {
        for (const auto role : {QPalette::Text, QPalette::WindowText}) {
            shades.setColor(role, palette().color(QPalette::Disabled, role));
        }
    }
    table_->setPalette(shades);
    QString words =
        tr("The card by the full-wave model: one row a working frequency of the planned bands and of "
           "your own list.");
    if (!failure_.isEmpty()) {
        words = tr("Not computed: %1").arg(failure_);
    } else if (stale) {
        words = job_.result() ? tr("Computing: what is greyed belongs to an older state.")
                              : tr("Computing the card.");
    }
    state_->setText(words);
}

} // namespace loopwright::pages
