#include "ui/shown_texts.hpp"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QBuffer>
#include <QComboBox>
#include <QGroupBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPainter>
#include <QProgressBar>
#include <QSpinBox>
#include <QSvgGenerator>
#include <QTabBar>
#include <QTextDocumentFragment>
#include <QTextEdit>
#include <QXmlStreamReader>

namespace loopwright::test {

namespace {

QString plain(const QString& text) {
    QString read = Qt::mightBeRichText(text) ? QTextDocumentFragment::fromHtml(text).toPlainText() : text;
    return read.remove(QLatin1Char('&'));
}

QString name_of(const QWidget& widget) {
    const QWidget* parent = widget.parentWidget();
    return QStringLiteral("%1 '%2' in %3")
        .arg(QLatin1String(widget.metaObject()->className()), widget.objectName(),
             QLatin1String(parent == nullptr ? "-" : parent->metaObject()->className()));
}

class Collector {
public:
    std::vector<ShownText> found;

    void widget(QWidget& widget) {
        name_ = name_of(widget);
        take("tooltip", widget.toolTip());
        take("status tip", widget.statusTip());
        take("what's this", widget.whatsThis());
        take("accessible name", widget.accessibleName());
        take("accessible description", widget.accessibleDescription());
        if (widget.isWindow()) {
            take("window title", widget.windowTitle());
        }
        words(widget);
        choices(widget);
        if (const auto* view = qobject_cast<QAbstractItemView*>(&widget)) {
            cells(*view);
        }
    }
    void action(const QAction& action) {
        name_ = QStringLiteral("action");
        take("text", action.text());
        take("tooltip", action.toolTip());
        take("status tip", action.statusTip());
    }

private:
    void take(const char* kind, const QString& text) {
        if (!text.isEmpty()) {
            found.push_back({QStringLiteral("%1, %2").arg(name_, QLatin1String(kind)), plain(text)});
        }
    }
    void words(const QWidget& widget) {
        if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) {
            take("text", button->text());
        } else if (const auto* label = qobject_cast<const QLabel*>(&widget)) {
            take("text", label->text());
        } else if (const auto* group = qobject_cast<const QGroupBox*>(&widget)) {
            take("title", group->title());
        } else if (const auto* line = qobject_cast<const QLineEdit*>(&widget)) {
            take("placeholder", line->placeholderText());
        } else if (const auto* bar = qobject_cast<const QProgressBar*>(&widget)) {
            take("format", bar->format().remove(QStringLiteral("%p")));
        } else if (const auto* menu = qobject_cast<const QMenu*>(&widget)) {
            take("title", menu->title());
        } else if (const auto* edit = qobject_cast<const QTextEdit*>(&widget)) {
            take("text", edit->toPlainText());
            take("placeholder", edit->placeholderText());
        } else if (const auto* spin = qobject_cast<const QSpinBox*>(&widget)) {
            take("parts", spin->prefix() + spin->suffix() + spin->specialValueText());
        } else if (const auto* spun = qobject_cast<const QDoubleSpinBox*>(&widget)) {
            take("parts", spun->prefix() + spun->suffix() + spun->specialValueText());
        }
    }
    void choices(const QWidget& widget) {
        if (const auto* box = qobject_cast<const QComboBox*>(&widget)) {
            for (int i = 0; i < box->count(); ++i) {
                take("choice", box->itemText(i));
                take("choice's tooltip", box->itemData(i, Qt::ToolTipRole).toString());
            }
        } else if (const auto* tabs = qobject_cast<const QTabBar*>(&widget)) {
            for (int i = 0; i < tabs->count(); ++i) {
                take("tab", tabs->tabText(i));
                take("tab's tooltip", tabs->tabToolTip(i));
            }
        }
    }
    void cells(const QAbstractItemView& view) {
        const QAbstractItemModel* model = view.model();
        if (model == nullptr) {
            return;
        }
        constexpr std::pair<int, const char*> roles[] = {{Qt::DisplayRole, "cell"},
                                                         {Qt::ToolTipRole, "cell's tooltip"},
                                                         {Qt::AccessibleTextRole, "cell, as said"},
                                                         {Qt::AccessibleDescriptionRole, "cell, described"}};
        for (const auto& [role, kind] : roles) {
            for (int column = 0; column < model->columnCount(); ++column) {
                take(kind, model->headerData(column, Qt::Horizontal, role).toString());
                for (int row = 0; row < model->rowCount(); ++row) {
                    take(kind, model->index(row, column).data(role).toString());
                }
            }
            for (int row = 0; row < model->rowCount(); ++row) {
                take(kind, model->headerData(row, Qt::Vertical, role).toString());
            }
        }
    }
    QString name_;
};

} // namespace

std::vector<ShownText> texts_of(QWidget& top) {
    Collector collector;
    collector.widget(top);
    for (QWidget* widget : top.findChildren<QWidget*>()) {
        if (!widget->objectName().startsWith(QStringLiteral("qt_"))) { // parts of Qt's own widgets
            collector.widget(*widget);
        }
    }
    for (const QAction* action : top.findChildren<QAction*>()) {
        collector.action(*action);
    }
    return collector.found;
}

QStringList letters_of_svg(const QByteArray& svg) {
    QStringList letters;
    QXmlStreamReader reader(svg);
    while (!reader.atEnd()) {
        if (reader.readNext() == QXmlStreamReader::StartElement && reader.name() == QLatin1String("text")) {
            letters << reader.readElementText();
        }
    }
    return letters;
}

std::vector<ShownText> painted_texts(QWidget& top) {
    std::vector<ShownText> found;
    for (QWidget* widget : top.findChildren<QWidget*>()) {
        if (!widget->isVisible() || qobject_cast<QLabel*>(widget) != nullptr) {
            continue;
        }
        QBuffer buffer;
        QSvgGenerator picture;
        picture.setOutputDevice(&buffer);
        picture.setSize(widget->size());
        QPainter painter(&picture);
        widget->render(&painter, QPoint(), QRegion(), QWidget::RenderFlags());
        painter.end();
        for (const QString& letters : letters_of_svg(buffer.data())) {
            found.push_back({name_of(*widget) + QStringLiteral(", painted"), letters});
        }
    }
    return found;
}

} // namespace loopwright::test
