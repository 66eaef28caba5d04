// SPDX-License-Identifier: MIT
#include "report/pdf.hpp"

#include <hpdf.h>

#include <algorithm>
#include <array>
#include <memory>
#include <stdexcept>
#include <string_view>
#include <type_traits>

namespace lightoff::report {
namespace {

// A4 in points, and what is left of it.
constexpr double kPageWidth = 595.276;
constexpr double kPageHeight = 841.89;
constexpr double kSide = 46.0;
constexpr double kTop = 50.0;
constexpr double kBottom = 54.0;
constexpr double kWidth = kPageWidth - 2.0 * kSide;

constexpr double kTitleSize = 20.0;
constexpr double kHeadingSize = 13.5;
constexpr double kStrongSize = 11.0;
constexpr double kBodySize = 9.5;
constexpr double kSmallSize = 8.0;
constexpr double kLeading = 1.32;
constexpr double kCellGap = 8.0;

struct Rgb {
    double r = 0.0;
    double g = 0.0;
    double b = 0.0;
};
constexpr Rgb hex(unsigned rgb) {
    return {static_cast<double>(rgb >> 16U & 255U) / 255.0, static_cast<double>(rgb >> 8U & 255U) / 255.0,
            static_cast<double>(rgb & 255U) / 255.0};
}
/// On white.
constexpr std::array<Rgb, kInks> kColours{hex(0x1B2730), hex(0x4E5861), hex(0x8A8778), hex(0x8C1D18),
                                          hex(0xEAE3D2), hex(0xFFFFFF), hex(0x1332A7), hex(0x6F0E4F),
                                          hex(0xA57700), hex(0x148D96), hex(0x8C2401)};

float f(double x) {
    return static_cast<float>(x);
}

struct Free {
    void operator()(HPDF_Doc doc) const { HPDF_Free(doc); }
};
using OwnedPdf = std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, Free>;

/// Sets blocks one below the other, page after page.
class PdfWriter {
public:
    PdfWriter() : doc_(HPDF_New(nullptr, nullptr)) {
        if (!doc_)
            throw std::runtime_error("no memory for a PDF");
        HPDF_SetCompressionMode(doc_.get(), HPDF_COMP_ALL);
        plain_ = HPDF_GetFont(doc_.get(), "Helvetica", "WinAnsiEncoding");
        strong_ = HPDF_GetFont(doc_.get(), "Helvetica-Bold", "WinAnsiEncoding");
    }

    std::string write(const Document& document) {
        title_ = in_western(document.title);
        HPDF_SetInfoAttr(doc_.get(), HPDF_INFO_TITLE, title_.c_str());
        new_page();
        paragraph(document.title, strong_, kTitleSize, Ink::ink);
        paragraph(document.subtitle, plain_, kBodySize, Ink::pencil);
        for (std::size_t i = 0; i < document.blocks.size(); ++i) {
            if (std::holds_alternative<Heading>(document.blocks[i]))
                need(height_with_next(document.blocks, i));
            std::visit([this](const auto& b) { add(b); }, document.blocks[i]);
        }
        number_pages();
        return bytes();
    }

private:
    // ---- pages

    void new_page() {
        page_ = HPDF_AddPage(doc_.get());
        pages_.push_back(page_);
        HPDF_Page_SetSize(page_, HPDF_PAGE_SIZE_A4, HPDF_PAGE_PORTRAIT);
        y_ = kTop;
    }
    /// A heading never stands alone at the foot of a page, and a figure keeps it on its own.
    static double height_with_next(const std::vector<Block>& blocks, std::size_t heading) {
        double height = 3.0 * kHeadingSize;
        for (std::size_t i = heading + 1; i < blocks.size() && i <= heading + 2; ++i) {
            if (const auto* figure = std::get_if<Figure>(&blocks[i]))
                return height + figure->drawing.height * kWidth / figure->drawing.width + 3.0 * kSmallSize;
            height += 3.0 * kStrongSize;
        }
        return height;
    }
    [[nodiscard]] double room() const { return kPageHeight - kBottom - y_; }
    void need(double height) {
        if (room() < height && y_ > kTop)
            new_page();
    }
    void number_pages() {
        for (std::size_t i = 0; i < pages_.size(); ++i) {
            page_ = pages_[i];
            const std::string number = std::to_string(i + 1) + " of " + std::to_string(pages_.size());
            const double y = kPageHeight - 30.0;
            put(kSide, y, title_, plain_, kSmallSize, Ink::pencil);
            put(kPageWidth - kSide - width_of(number, plain_, kSmallSize), y, number, plain_, kSmallSize,
                Ink::pencil);
        }
    }
    std::string bytes() {
        HPDF_SaveToStream(doc_.get());
        std::string out(HPDF_GetStreamSize(doc_.get()), '\0');
        HPDF_ResetStream(doc_.get());
        auto size = static_cast<HPDF_UINT32>(out.size());
        HPDF_ReadFromStream(doc_.get(), reinterpret_cast<HPDF_BYTE*>(out.data()), &size);
        // What is read to its very end is told as an error by the library; only the text itself decides.
        out.resize(size);
        if (out.rfind("%PDF-", 0) != 0 || out.find("%%EOF") == std::string::npos)
            throw std::runtime_error("the PDF could not be made (error " +
                                     std::to_string(HPDF_GetError(doc_.get())) + " of libharu)");
        return out;
    }

    // ---- marks; y from the page's top

    void colour(Ink ink) {
        const Rgb& c = kColours[static_cast<std::size_t>(ink)];
        HPDF_Page_SetRGBFill(page_, f(c.r), f(c.g), f(c.b));
        HPDF_Page_SetRGBStroke(page_, f(c.r), f(c.g), f(c.b));
    }
    /// `text` in the fonts' encoding; y of the base line.
    void put(double x, double y, const std::string& text, HPDF_Font font, double size, Ink ink) {
        colour(ink);
        HPDF_Page_BeginText(page_);
        HPDF_Page_SetFontAndSize(page_, font, f(size));
        HPDF_Page_TextOut(page_, f(x), f(kPageHeight - y), text.c_str());
        HPDF_Page_EndText(page_);
    }
    double width_of(const std::string& text, HPDF_Font font, double size) {
        HPDF_Page_SetFontAndSize(page_, font, f(size));
        return static_cast<double>(HPDF_Page_TextWidth(page_, text.c_str()));
    }
    void line(Point a, Point b, double width, Ink ink) {
        colour(ink);
        HPDF_Page_SetLineWidth(page_, f(width));
        HPDF_Page_MoveTo(page_, f(a.x), f(kPageHeight - a.y));
        HPDF_Page_LineTo(page_, f(b.x), f(kPageHeight - b.y));
        HPDF_Page_Stroke(page_);
    }

    // ---- text

    /// Broken at spaces to a width; a word that is too long by itself is cut into pieces.
    std::vector<std::string> lines_of(const std::string& utf8, HPDF_Font font, double size, double width) {
        const std::string text = in_western(utf8);
        std::vector<std::string> lines;
        std::string now;
        for (std::size_t from = 0; from < text.size();) {
            std::size_t to = std::min(text.find(' ', from), text.size());
            std::string word = text.substr(from, to - from);
            from = to + 1;
            std::string longer = now;
            if (!longer.empty())
                longer += ' ';
            longer += word;
            if (width_of(longer, font, size) <= width) {
                now = longer;
                continue;
            }
            if (!now.empty())
                lines.push_back(now);
            while (word.size() > 1 && width_of(word, font, size) > width) {
                std::size_t n = word.size() - 1;
                while (n > 1 && width_of(word.substr(0, n), font, size) > width)
                    --n;
                lines.push_back(word.substr(0, n));
                word.erase(0, n);
            }
            now = word;
        }
        if (!now.empty() || lines.empty())
            lines.push_back(now);
        return lines;
    }
    void paragraph(const std::string& words, HPDF_Font font, double size, Ink ink) {
        for (const std::string& text : lines_of(words, font, size, kWidth)) {
            need(size * kLeading);
            put(kSide, y_ + size, text, font, size, ink);
            y_ += size * kLeading;
        }
        y_ += size * 0.35;
    }

    // ---- blocks

    void add(const Heading& heading) {
        y_ += y_ > kTop ? 12.0 : 0.0;
        line({kSide, y_}, {kSide + kWidth, y_}, 1.2, Ink::ink);
        y_ += 5.0;
        paragraph(heading.words, strong_, kHeadingSize, Ink::ink);
    }
    void add(const Paragraph& p) {
        switch (p.weight) {
        case Paragraph::Weight::ordinary:
            return paragraph(p.words, plain_, kBodySize, Ink::ink);
        case Paragraph::Weight::strong:
            return paragraph(p.words, strong_, kStrongSize, Ink::ink);
        case Paragraph::Weight::alarm:
            return paragraph(p.words, strong_, kBodySize, Ink::alarm);
        case Paragraph::Weight::small:
            return paragraph(p.words, plain_, kSmallSize, Ink::pencil);
        }
    }

    std::vector<double> widths_of(const Table& table) {
        double shares = 0.0;
        for (const Table::Column& column : table.columns)
            shares += column.share;
        const double width = kWidth - kCellGap * static_cast<double>(table.columns.size() - 1);
        std::vector<double> widths;
        for (const Table::Column& column : table.columns)
            widths.push_back(width * column.share / shares);
        return widths;
    }
    void row(const Table& table, const std::vector<double>& widths, const std::vector<std::string>& cells,
             Ink ink, double size) {
        std::vector<std::vector<std::string>> lines;
        std::size_t most = 1;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            lines.push_back(lines_of(cells[i], plain_, size, widths[i]));
            most = std::max(most, lines.back().size());
        }
        const double height = static_cast<double>(most) * size * kLeading + 3.0;
        if (room() < height && y_ > kTop) {
            new_page();
            if (ink != Ink::pencil)
                heads(table, widths);
        }
        double x = kSide;
        for (std::size_t i = 0; i < lines.size(); ++i) {
            for (std::size_t k = 0; k < lines[i].size(); ++k) {
                const std::string& text = lines[i][k];
                const double left =
                    table.columns[i].figures ? x + widths[i] - width_of(text, plain_, size) : x;
                put(left, y_ + size + static_cast<double>(k) * size * kLeading, text, plain_, size, ink);
            }
            x += widths[i] + kCellGap;
        }
        y_ += height;
        line({kSide, y_}, {kSide + kWidth, y_}, 0.3, Ink::rule);
        y_ += 1.5;
    }
    void heads(const Table& table, const std::vector<double>& widths) {
        std::vector<std::string> names;
        for (const Table::Column& column : table.columns)
            names.push_back(column.head);
        if (std::any_of(names.begin(), names.end(), [](const std::string& name) { return !name.empty(); }))
            row(table, widths, names, Ink::pencil, kSmallSize);
    }
    void add(const Table& table) {
        const std::vector<double> widths = widths_of(table);
        need(40.0);
        heads(table, widths);
        for (const auto& cells : table.rows)
            row(table, widths, cells, Ink::ink, kBodySize);
        y_ += 6.0;
    }

    void add(const Figure& figure) {
        const Drawing& d = figure.drawing;
        const double scale = kWidth / d.width;
        need(d.height * scale + 2.0 * kSmallSize);
        const double top = y_;
        const auto place = [&](Point p) { return Point{kSide + p.x * scale, top + p.y * scale}; };
        for (const auto& shape : d.shapes)
            std::visit([&](const auto& s) { draw(s, place, scale); }, shape);
        y_ = top + d.height * scale + 2.0;
        paragraph(figure.caption, plain_, kSmallSize, Ink::pencil);
    }
    template <class Place>
    void draw(const Path& path, const Place& place, double scale) {
        if (path.points.size() < 2)
            return;
        colour(path.ink);
        HPDF_Page_SetLineWidth(page_, f(path.width * scale));
        HPDF_Page_SetLineJoin(page_, HPDF_ROUND_JOIN);
        constexpr std::array<HPDF_UINT16, 2> kDashes{4, 3};
        HPDF_Page_SetDash(page_, path.dashed ? kDashes.data() : nullptr, path.dashed ? 2 : 0, 0);
        for (std::size_t i = 0; i < path.points.size(); ++i) {
            const Point p = place(path.points[i]);
            if (i == 0)
                HPDF_Page_MoveTo(page_, f(p.x), f(kPageHeight - p.y));
            else
                HPDF_Page_LineTo(page_, f(p.x), f(kPageHeight - p.y));
        }
        if (path.filled)
            HPDF_Page_ClosePathFillStroke(page_);
        else
            HPDF_Page_Stroke(page_);
        HPDF_Page_SetDash(page_, nullptr, 0, 0);
    }
    template <class Place>
    void draw(const Words& words, const Place& place, double scale) {
        const HPDF_Font font = words.bold ? strong_ : plain_;
        const std::string text = in_western(words.text);
        const double size = words.size * scale;
        const double width = width_of(text, font, size);
        const Point p = place(words.at);
        const double left = words.anchor == Anchor::start    ? p.x
                            : words.anchor == Anchor::middle ? p.x - width / 2
                                                             : p.x - width;
        put(left, p.y, text, font, size, words.ink);
    }
    template <class Place>
    void draw(const Dot& dot, const Place& place, double scale) {
        const Point p = place(dot.at);
        colour(dot.ink);
        HPDF_Page_SetLineWidth(page_, f(2.0 * scale));
        if (!dot.filled)
            HPDF_Page_SetRGBFill(page_, 1.0F, 1.0F, 1.0F);
        HPDF_Page_Circle(page_, f(p.x), f(kPageHeight - p.y), f(dot.radius * scale));
        HPDF_Page_FillStroke(page_);
    }

    OwnedPdf doc_;
    HPDF_Font plain_ = nullptr;
    HPDF_Font strong_ = nullptr;
    HPDF_Page page_ = nullptr;
    std::vector<HPDF_Page> pages_;
    std::string title_;
    double y_ = 0.0;
};

struct Sign {
    unsigned code;
    std::string_view western;
};
/// Signs that lie elsewhere in Windows-1252 than in Unicode, and what stands in for those that it does not
/// have.
constexpr std::array<Sign, 16> kSigns{{{0x2013, "\x96"},
                                       {0x2014, "\x97"},
                                       {0x2018, "\x91"},
                                       {0x2019, "\x92"},
                                       {0x201C, "\x93"},
                                       {0x201D, "\x94"},
                                       {0x2022, "\x95"},
                                       {0x2026, "\x85"},
                                       {0x20AC, "\x80"},
                                       {0x2122, "\x99"},
                                       {0x2212, "\x96"}, // minus
                                       {0x03BC, "\xB5"}, // mu
                                       {0x03A9, "ohm"},
                                       {0x2126, "ohm"},
                                       {0x2192, "to"},
                                       {0x2082, "2"}}};

} // namespace

std::string in_western(std::string_view utf8) {
    std::string out;
    for (std::size_t i = 0; i < utf8.size();) {
        const auto first = static_cast<unsigned char>(utf8[i]);
        const std::size_t length = first < 0x80U ? 1 : first < 0xE0U ? 2 : first < 0xF0U ? 3 : 4;
        unsigned code = length == 1 ? first : first & (0xFFU >> (length + 1));
        for (std::size_t k = 1; k < length && i + k < utf8.size(); ++k)
            code = code << 6U | (static_cast<unsigned char>(utf8[i + k]) & 0x3FU);
        i += length;
        const auto* sign =
            std::find_if(kSigns.begin(), kSigns.end(), [&](const Sign& s) { return s.code == code; });
        if (sign != kSigns.end())
            out += sign->western;
        else if (code == '\n' || code == '\t')
            out += ' ';
        else
            out += (code >= 0x20U && code < 0x7FU) || (code >= 0xA0U && code <= 0xFFU)
                       ? static_cast<char>(code)
                       : '?';
    }
    return out;
}

std::string to_pdf(const Document& document) {
    return PdfWriter().write(document);
}

} // namespace lightoff::report
