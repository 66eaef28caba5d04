// SPDX-License-Identifier: MIT
#include "report/html.hpp"

#include "report/words.hpp"

#include <array>
#include <cmath>
#include <string_view>

namespace lightoff::report {
namespace {

/// The window's colours on paper and in the basement (gui/canvas/theme.cpp); printed, ink on white.
constexpr std::string_view kStyle = R"(
:root{color-scheme:light dark;--ground:#F5F0E3;--panel:#EAE3D2;--ink:#1B2730;--pencil:#4E5861;--rule:#8A8778;--alarm:#8C1D18;--volts24:#1332A7;--volts120:#6F0E4F;--gas:#A57700;--air:#148D96;--heat:#8C2401}
@media (prefers-color-scheme:dark){:root{--ground:#15191C;--panel:#1F2529;--ink:#ECE6D8;--pencil:#A3ABAF;--rule:#6C757A;--alarm:#FF9A8C;--volts24:#5A60EC;--volts120:#CE5171;--gas:#FCEC20;--air:#66F7F6;--heat:#E33701}}
@media print{:root{--ground:#fff;--panel:#fff;--ink:#000;--pencil:#333;--rule:#777;--alarm:#8C1D18;--volts24:#1332A7;--volts120:#6F0E4F;--gas:#A57700;--air:#148D96;--heat:#8C2401}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:16px/1.45 Inter,Arial,Helvetica,sans-serif;font-variant-numeric:tabular-nums}
main{max-width:760px;margin:0 auto;padding:32px 24px 64px}
h1{font-size:28px;line-height:1.2;margin:0}
h2{font-size:20px;line-height:1.25;margin:36px 0 8px;padding-top:10px;border-top:2px solid var(--ink);break-after:avoid}
p{margin:8px 0;max-width:64ch}
.under{color:var(--pencil);margin:4px 0 0}
.strong{font-weight:600;font-size:18px}
.alarm{color:var(--alarm);font-weight:600}
.small{color:var(--pencil);font-size:14px;overflow-wrap:anywhere}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;margin:10px 0;font-size:15px}
th{text-align:left;font-weight:400;color:var(--pencil);font-size:14px}
th,td{padding:4px 12px 4px 0;vertical-align:top;border-bottom:1px solid var(--rule);overflow-wrap:break-word}
th:last-child,td:last-child{padding-right:0}
.n{text-align:right;white-space:nowrap}
tr{break-inside:avoid}
figure{margin:14px 0;break-inside:avoid}
figcaption{color:var(--pencil);font-size:14px}
svg{display:block;width:100%;height:auto;font-family:Inter,Arial,Helvetica,sans-serif}
@media print{main{max-width:none;padding:0}body{font-size:10.5pt}table{font-size:9.5pt}th,.under,.small,figcaption{font-size:9pt}@page{margin:18mm 16mm}}
)";

constexpr std::array<std::string_view, kInks> kInkNames{
    "ink", "pencil", "rule", "alarm", "panel", "ground", "volts24", "volts120", "gas", "air", "heat"};

std::string_view name_of(Ink ink) {
    return kInkNames[static_cast<std::size_t>(ink)];
}

std::string escaped(std::string_view words) {
    std::string out;
    for (const char c : words) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

std::string px(double value) {
    return (value < 0.0 ? "-" : "") + decimal(std::abs(value), 1);
}

std::string colour(std::string_view property, Ink ink) {
    return std::string(property) + ":var(--" + std::string(name_of(ink)) + ")";
}

class SvgWriter {
public:
    std::string write(const Drawing& d) {
        out_ = "<svg viewBox=\"0 0 " + px(d.width) + " " + px(d.height) + "\" role=\"img\">\n<title>" +
               escaped(d.title) + "</title>\n<desc>" + escaped(d.description) + "</desc>\n";
        for (const auto& shape : d.shapes)
            std::visit([this](const auto& s) { add(s); }, shape);
        return out_ + "</svg>\n";
    }

private:
    void add(const Path& path) {
        std::string points;
        for (const Point& p : path.points)
            points += (points.empty() ? "" : " ") + px(p.x) + "," + px(p.y);
        if (path.filled)
            out_ += "<polygon style=\"" + colour("fill", path.ink) + "\" points=\"" + points + "\"/>\n";
        else
            out_ += "<polyline style=\"fill:none;stroke-linejoin:round;" + colour("stroke", path.ink) +
                    "\" stroke-width=\"" + px(path.width) + "\"" +
                    (path.dashed ? " stroke-dasharray=\"6 4\"" : "") + " points=\"" + points + "\"/>\n";
    }
    void add(const Words& words) {
        constexpr std::array<const char*, 3> kAnchors{"start", "middle", "end"};
        out_ += "<text x=\"" + px(words.at.x) + "\" y=\"" + px(words.at.y) + "\" font-size=\"" +
                px(words.size) + "\" text-anchor=\"" + kAnchors[static_cast<std::size_t>(words.anchor)] +
                "\"" + (words.bold ? " font-weight=\"600\"" : "") + " style=\"" + colour("fill", words.ink) +
                "\">" + escaped(words.text) + "</text>\n";
    }
    void add(const Dot& dot) {
        out_ += "<circle cx=\"" + px(dot.at.x) + "\" cy=\"" + px(dot.at.y) + "\" r=\"" + px(dot.radius) +
                "\" stroke-width=\"2\" style=\"" + colour("stroke", dot.ink) + ";" +
                colour("fill", dot.filled ? dot.ink : Ink::ground) + "\"/>\n";
    }

    std::string out_;
};

class HtmlWriter {
public:
    std::string write(const Document& document) {
        out_ = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
               "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
               escaped(document.title) + "</title>\n<style>" + std::string(kStyle) +
               "</style>\n</head>\n<body>\n<main>\n<h1>" + escaped(document.title) +
               "</h1>\n<p class=\"under\">" + escaped(document.subtitle) + "</p>\n";
        for (const Block& block : document.blocks)
            std::visit([this](const auto& b) { add(b); }, block);
        return out_ + "</main>\n</body>\n</html>\n";
    }

private:
    void add(const Heading& heading) { out_ += "<h2>" + escaped(heading.words) + "</h2>\n"; }
    void add(const Paragraph& paragraph) {
        constexpr std::array<const char*, 4> kClasses{"", " class=\"strong\"", " class=\"alarm\"",
                                                      " class=\"small\""};
        out_ += std::string("<p") + kClasses[static_cast<std::size_t>(paragraph.weight)] + ">" +
                escaped(paragraph.words) + "</p>\n";
    }
    void add(const Table& table) {
        out_ += "<div class=\"wide\"><table>\n";
        bool has_heads = false;
        for (const Table::Column& column : table.columns)
            has_heads = has_heads || !column.head.empty();
        if (has_heads) {
            out_ += "<thead><tr>";
            for (const Table::Column& column : table.columns)
                out_ += std::string("<th scope=\"col\"") + (column.figures ? " class=\"n\"" : "") + ">" +
                        escaped(column.head) + "</th>";
            out_ += "</tr></thead>\n";
        }
        out_ += "<tbody>\n";
        for (const auto& row : table.rows) {
            out_ += "<tr>";
            for (std::size_t i = 0; i < row.size(); ++i)
                out_ += std::string("<td") + (table.columns[i].figures ? " class=\"n\"" : "") + ">" +
                        escaped(row[i]) + "</td>";
            out_ += "</tr>\n";
        }
        out_ += "</tbody></table></div>\n";
    }
    void add(const Figure& figure) {
        out_ += "<figure>\n" + SvgWriter().write(figure.drawing) + "<figcaption>" + escaped(figure.caption) +
                "</figcaption>\n</figure>\n";
    }

    std::string out_;
};

} // namespace

std::string to_html(const Document& document) {
    return HtmlWriter().write(document);
}

} // namespace lightoff::report
