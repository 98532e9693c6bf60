#pragma once
// A language of its own for tests: every letter of a source text is replaced by its wide form, so that any
// narrow letter on the screen came there untranslated: a literal, or an argument put into a text.
#include <QString>
#include <QTranslator>

namespace loopwright::test {

class MarkingTranslator : public QTranslator {
public:
    using QTranslator::QTranslator;
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* context, const char* source, const char* disambiguation,
                                    int count) const override;
};

/// A text in that language: tags, entities and places of arguments stay.
[[nodiscard]] QString marked(const QString& source);

} // namespace loopwright::test
