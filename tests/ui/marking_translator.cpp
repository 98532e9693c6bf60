#include "ui/marking_translator.hpp"

#include <QRegularExpression>

namespace loopwright::test {

QString marked(const QString& source) {
    // What keeps its letters: tags, entities, %1, %L1, %n, and patterns of file names.
    static const QRegularExpression kept(
        QStringLiteral("</?[a-z][^>]*>|&[a-z]+;|&#[0-9]+;|%L?[0-9]+|%L?n|\\*\\.[a-z0-9]+"));
    constexpr char16_t wide_by = 0xFEE0;
    QString text;
    qsizetype done = 0;
    const auto widen = [&text](QStringView piece) {
        for (const QChar letter : piece) {
            const bool ascii = (letter >= u'A' && letter <= u'Z') || (letter >= u'a' && letter <= u'z');
            text += ascii ? QChar(static_cast<char16_t>(letter.unicode() + wide_by)) : letter;
        }
    };
    for (auto each = kept.globalMatch(source); each.hasNext();) {
        const auto match = each.next();
        widen(QStringView(source).mid(done, match.capturedStart() - done));
        text += match.captured();
        done = match.capturedEnd();
    }
    widen(QStringView(source).mid(done));
    return text;
}

QString MarkingTranslator::translate(const char* /*context*/, const char* source,
                                     const char* /*disambiguation*/, int /*count*/) const {
    return marked(QString::fromUtf8(source));
}

} // namespace loopwright::test
