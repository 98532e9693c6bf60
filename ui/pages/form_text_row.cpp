// A line of text as a row of a form: taken with every keystroke that can be read; one that cannot is refused
// when the person leaves, and the design is then what it was before the typing.
#include "base/error.hpp"
#include "inputs/text_field.hpp"
#include "pages/form_group.hpp"
#include "pages/refusal.hpp"

#include <QLabel>
#include <QVBoxLayout>

#include <memory>
#include <optional>

namespace loopwright::pages {

namespace {

/// Of one field, while it is being typed in.
struct Typing {
    std::optional<QString> before; ///< what the design said when the typing began
    QString shown;                 ///< what the design says, as the row knows it
    QString refusal;               ///< why the text as it stands is not taken
};

} // namespace

void FormGroup::add(const TextSpec& spec) {
    auto* field = new QWidget(this);
    auto* line = new inputs::TextField(field);
    auto* refusal = new QLabel(field);
    auto* column = new QVBoxLayout(field);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(line);
    column->addWidget(refusal);
    refusal->setWordWrap(true);
    refusal->setTextFormat(Qt::PlainText);
    refusal->setTextInteractionFlags(Qt::TextSelectableByMouse);
    refusal->hide();
    line->setObjectName(QString::fromStdString(spec.words.path));
    line->setPlaceholderText(spec.placeholder);
    auto typing = std::make_shared<Typing>();
    const auto take = [this, spec, typing](const QString& text) {
        typing->refusal.clear();
        const auto refuse = [typing](const QString& why) { typing->refusal = why; };
        design::Design next = context_.document.design();
        try {
            spec.set(next, text);
        } catch (const base::InputError& error) {
            refuse(refusal_sentence(error));
            return;
        }
        const session::EditLabel label{plain_label(spec.words), typing->before.value_or(QString()),
                                       spec.get(next)};
        typing->shown = spec.get(next); // what comes back of the typing is no news
        apply(next, label, spec.words.path, refuse);
        typing->shown = spec.get(context_.document.design());
    };
    connect(line, &QLineEdit::textEdited, this, [this, spec, typing, take, refusal](const QString& text) {
        if (!typing->before) {
            typing->before = spec.get(context_.document.design());
        }
        refusal->hide();
        take(text);
    });
    connect(line, &QLineEdit::editingFinished, this, [this, spec, typing, take, line, refusal] {
        if (typing->before && typing->refusal.isEmpty()) {
            line->show_text(spec.get(context_.document.design())); // as the design writes it
        } else if (typing->before) {
            const QString why = typing->refusal;
            const QString refused = line->text();
            take(*typing->before);
            line->show_text(refused); // stands there with its reason
            refusal->setText(why);
            refusal->show();
        }
        typing->before.reset();
        typing->refusal.clear();
        context_.document.end_merge();
    });
    Row row{nullptr, field, nullptr, spec.words, {}, {}};
    row.show = [line, refusal, typing, spec](const design::Design& design) {
        const QString now = spec.get(design);
        const bool news = now != typing->shown;
        typing->shown = now;
        if (!news && (typing->before || !refusal->isHidden())) {
            return; // the person's text stays while the design has nothing new to say
        }
        refusal->hide();
        line->show_text(now);
    };
    row.summary = [spec](const design::Design& design) {
        const QString now = spec.get(design);
        return now.isEmpty() ? spec.placeholder : now;
    };
    place(std::move(row), line);
}

} // namespace loopwright::pages
