// SPDX-License-Identifier: MIT
#include "gui/diagram/diagram.hpp"
#include "files/bundle_loader.hpp"
#include "gui/diagram/label_placer.hpp"
#include "gui/diagram/picking.hpp"
#include "gui/diagram/symbols.hpp"
#include "gui/headless.hpp"
#include "gui/platform/platform.hpp"
#include "gui/view/marks.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <iostream>
#include <map>
#include <set>
#include <sstream>

using namespace lightoff;
using namespace lightoff::diagram;

namespace {

const files::LoadedBundle& bundle_of(const std::string& call) {
    static std::map<std::string, files::LoadedBundle> loaded;
    const auto it = loaded.find(call);
    return it != loaded.end() ? it->second : loaded.emplace(call, files::load_bundle(call)).first->second;
}

constexpr const char* kInduced = "call-for-heat";
constexpr const char* kNatural = "natural-draft-call";

const furnace::Model& model_of(const std::string& call) {
    return bundle_of(call).site.model;
}

/// A call with its diagram in a pane of its own.
struct Pane {
    explicit Pane(const std::string& call, ImVec2 size = {776, 576},
                  canvas::ThemeId theme = canvas::ThemeId::Paper, float scale = 1)
        : bundle(bundle_of(call)), visit(bundle, 1), ladder(lay_out(bundle.site.model)),
          screen(size, theme, scale) {
        ImGui::GetIO().DisplaySize = size;
        const float margin = ImGui::GetStyle().WindowPadding.x; // the page's window clips at half of it
        area = {{margin, 8}, {size.x - margin, size.y - 8}};
    }

    void act(const std::string& line) {
        INFO(line);
        const visit::Visit::Listener quiet{[](const bench::Caption&) {},
                                           [](const bench::Reading&, std::size_t) {}, [] { return false; }};
        const std::string why = visit.act(bench::parse_action(bundle.site, line), "mouse", quiet);
        CHECK(why == "");
        REQUIRE(why.empty());
    }

    void settle() {
        wanted = {};
        screen.settle([&](const canvas::Canvas& canvas) {
            view::Wanted now;
            const view::Known known = view::known_of(visit, bundle.scenario);
            draw_diagram(canvas, area, ladder, known, view, now);
            if (now.lead != view::Wanted::Lead::none) {
                wanted.lead = now.lead;
                wanted.lead_point = now.lead_point;
            }
            if (now.focus)
                wanted.focus = now.focus;
            wanted.hover = now.hover;
        });
    }

    ImVec2 place_of(int spot) {
        const view::Known known = view::known_of(visit, bundle.scenario);
        return spot_places(ladder, view.place, known)[static_cast<std::size_t>(spot)];
    }

    int node(const std::string& name) const { return bundle.site.model.find_test_point(name); }

    const files::LoadedBundle& bundle;
    visit::Visit visit;
    Ladder ladder;
    test::Headless screen;
    DiagramView view;
    view::Wanted wanted;
    canvas::Rect area;
};

std::string joined(const std::vector<std::string>& lines) {
    std::ostringstream out;
    for (const std::string& line : lines)
        out << line << '\n';
    return out.str();
}

/// Every terminal has its pin and its lug, every wire one line between the nodes that it joins.
void check_complete(const furnace::Model& model, const Ladder& ladder) {
    std::vector<int> pins(model.wiring.terminals.size(), 0), lugs = pins;
    for (const Spot& spot : ladder.spots)
        if (spot.terminal >= 0)
            ++(spot.lug ? lugs : pins)[static_cast<std::size_t>(spot.terminal)];
    for (std::size_t t = 0; t < pins.size(); ++t) {
        INFO(model.wiring.terminals[t].name);
        CHECK(pins[t] == 1);
        CHECK(lugs[t] == 1);
    }
    std::map<int, int> wires;
    for (const Wire& wire : ladder.wires) {
        INFO(wire.name);
        const electrical::Element& element =
            model.wiring.netlist.elements[static_cast<std::size_t>(wire.element)];
        ++wires[wire.element];
        CHECK(std::minmax(wire.from_node, wire.to_node) == std::minmax(element.a, element.b));
    }
    CHECK(wires.size() == model.wiring.wires.size());
    for (const int element : model.wiring.wires) {
        INFO(model.wiring.netlist.element_names[static_cast<std::size_t>(element)]);
        CHECK(wires[element] == 1);
    }
}

bool touches(ImVec2 a, ImVec2 b) {
    return std::abs(a.x - b.x) < 0.6F && std::abs(a.y - b.y) < 0.6F;
}

} // namespace

TEST_CASE("every terminal, every other touchable node and every wire has one place in the diagram") {
    const std::string call = GENERATE(kInduced, kNatural);
    const furnace::Model& model = model_of(call);
    const Ladder ladder = lay_out(model);

    INFO(call);
    check_complete(model, ladder);
    std::map<int, int> of_node;
    std::set<std::pair<float, float>> taken;
    for (const Spot& spot : ladder.spots) {
        INFO(call << ": " << spot.full_name);
        ++of_node[spot.node];
        CHECK(model.find_test_point(spot.full_name) == spot.node);
        CHECK(taken.insert({spot.at.x, spot.at.y}).second);
        CHECK(ladder.bounds.holds(spot.at));
    }
    for (std::size_t node = 0; node < model.touchable.size(); ++node) {
        INFO(call << ": " << model.test_point_name(static_cast<int>(node)));
        CHECK((of_node.count(static_cast<int>(node)) != 0) == (model.touchable[node] != 0));
    }
}

TEST_CASE("a furnace with a wire on another terminal is drawn completely too") {
    const std::string call = GENERATE(kInduced, kNatural);
    const std::vector<int>& wires = model_of(call).wiring.wires;
    const auto& terminals = model_of(call).wiring.terminals;
    for (std::size_t i = 0; i < wires.size(); ++i) {
        furnace::Model model = model_of(call);
        electrical::Element& wire = model.wiring.netlist.elements[static_cast<std::size_t>(wires[i])];
        wire.b = terminals[i * 7 % terminals.size()].lug;
        if (wire.a == wire.b)
            continue;
        INFO(call << ": " << model.wiring.netlist.element_names[static_cast<std::size_t>(wires[i])]);
        check_complete(model, lay_out(model));
    }
}

TEST_CASE("a furnace that no supply feeds is drawn without L and N") {
    furnace::Model model = model_of(kInduced);
    for (electrical::Element& element : model.wiring.netlist.elements)
        if (element.kind == electrical::ElementKind::source)
            element.kind = electrical::ElementKind::resistor;
    const Ladder ladder = lay_out(model);
    check_complete(model, ladder);
    std::set<std::string> rails;
    for (const RailLine& rail : ladder.rails)
        rails.insert(rail.name);
    CHECK(rails == std::set<std::string>{"C", "R"});
}

TEST_CASE("every switch, coil, winding and burner part has one symbol, and none lies on another") {
    using electrical::ElementKind;
    const std::string call = GENERATE(kInduced, kNatural);
    const furnace::Model& model = model_of(call);
    const electrical::Netlist& net = model.wiring.netlist;
    const Ladder ladder = lay_out(model);
    std::map<int, int> symbols;
    for (const Symbol& symbol : ladder.symbols)
        ++symbols[symbol.element];
    const std::set<ElementKind> drawn{ElementKind::contact, ElementKind::fuse,  ElementKind::coil,
                                      ElementKind::winding, ElementKind::flame, ElementKind::igniter,
                                      ElementKind::source};
    for (std::size_t e = 0; e < net.elements.size(); ++e) {
        INFO(call << ": " << net.element_names[e]);
        if (drawn.count(net.elements[e].kind) != 0)
            CHECK(symbols[static_cast<int>(e)] == 1);
        else
            CHECK(symbols[static_cast<int>(e)] <= 1);
    }
    for (const Symbol& one : ladder.symbols)
        for (const Symbol& other : ladder.symbols) {
            if (one.element >= other.element)
                continue;
            INFO(call << ": " << net.element_names[static_cast<std::size_t>(one.element)] << " and "
                      << net.element_names[static_cast<std::size_t>(other.element)]);
            const auto [left, right] = std::minmax(one.from.x, one.to.x);
            const auto [other_left, other_right] = std::minmax(other.from.x, other.to.x);
            const bool lie = one.from.y == one.to.y && other.from.y == other.to.y;
            CHECK_FALSE((lie && one.from.y == other.from.y && left < other_right && other_left < right));
        }
}

TEST_CASE("every line lies or stands, within the sheet") {
    const std::string call = GENERATE(kInduced, kNatural);
    const Ladder ladder = lay_out(model_of(call));
    std::vector<std::vector<ImVec2>> paths;
    for (const Wire& wire : ladder.wires)
        paths.push_back(wire.path);
    for (const Track& track : ladder.tracks)
        paths.push_back(track.path);
    for (const RailLine& rail : ladder.rails)
        paths.push_back(rail.path);
    for (const Symbol& symbol : ladder.symbols)
        paths.push_back({symbol.from, symbol.to});
    for (const std::vector<ImVec2>& path : paths) {
        INFO(call << ": from " << path.front().x << ", " << path.front().y);
        REQUIRE(path.size() >= 2);
        for (std::size_t i = 0; i < path.size(); ++i) {
            CHECK(ladder.bounds.holds(path[i]));
            CHECK((i == 0 || path[i].x == path[i - 1].x || path[i].y == path[i - 1].y));
        }
    }
}

TEST_CASE("a wire is drawn between the lugs that it joins") {
    const std::string call = GENERATE(kInduced, kNatural);
    const furnace::Model& model = model_of(call);
    const Ladder ladder = lay_out(model);
    for (const Wire& wire : ladder.wires) {
        INFO(call << ": " << wire.name);
        for (const auto& [spot, end] :
             {std::pair{wire.from, wire.path.front()}, {wire.to, wire.path.back()}}) {
            if (spot < 0)
                continue;
            const Spot& s = ladder.spots[static_cast<std::size_t>(spot)];
            const bool ground =
                model.wiring.netlist.node_names[static_cast<std::size_t>(s.node)] == "cabinet.metal";
            CHECK((ground || touches(s.at, end))); // to the cabinet's metal by a ground mark
        }
    }
}

TEST_CASE("the rungs read as the trade writes them: parts in series in the order that current meets") {
    const Ladder ladder = lay_out(model_of(kInduced));
    const auto x = [&](const std::string& name) {
        for (const Symbol& symbol : ladder.symbols)
            if (symbol.name == name)
                return symbol.from.x;
        FAIL("no symbol " << name);
        return 0.0F;
    };
    const auto y = [&](const std::string& name) {
        for (const Symbol& symbol : ladder.symbols)
            if (symbol.name == name)
                return symbol.from.y;
        FAIL("no symbol " << name);
        return 0.0F;
    };
    // The valve's path in hardware: R, rollout, limit, pressure switch, relay, valve, C.
    CHECK(x("rollout") < x("limit"));
    CHECK(x("limit") < x("pressure switch"));
    CHECK(x("pressure switch") < x("K3"));
    CHECK(x("K3") < x("gas valve"));
    CHECK(y("rollout") == y("gas valve"));
    // 120 V above the transformer, 24 V below it.
    CHECK(y("igniter") < y("primary 120 V"));
    CHECK(y("primary 120 V") < y("secondary 24 V"));
    CHECK(y("secondary 24 V") < y("rollout"));
    CHECK(x("primary 120 V") == x("secondary 24 V"));

    const Ladder other = lay_out(model_of(kNatural));
    std::map<std::string, float> at;
    for (const Symbol& symbol : other.symbols)
        at[symbol.name] = symbol.from.x;
    CHECK(at["heat contact"] < at["spill switch"]);
    CHECK(at["spill switch"] < at["limit"]);
    CHECK(at["limit"] < at["gas valve"]);
}

TEST_CASE("rails are L and N of the supply, R and C of the secondary") {
    for (const char* call : {kInduced, kNatural}) {
        const furnace::Model& model = model_of(call);
        const Ladder ladder = lay_out(model);
        std::map<std::string, std::string> rails;
        for (const RailLine& rail : ladder.rails)
            rails[rail.name] = model.test_point_name(rail.node);
        CHECK(rails == std::map<std::string, std::string>{{"C", "board.track_common"},
                                                          {"L", "board.track_line"},
                                                          {"N", "board.track_neutral"},
                                                          {"R", "board.track_R"}});
        CHECK(ladder.spots[static_cast<std::size_t>(ladder.common_spot)].full_name == "board.C");
    }
}

TEST_CASE("the layout is the same each time") {
    const Ladder one = lay_out(model_of(kInduced));
    const Ladder other = lay_out(model_of(kInduced));
    REQUIRE(one.spots.size() == other.spots.size());
    for (std::size_t i = 0; i < one.spots.size(); ++i) {
        CHECK(one.spots[i].full_name == other.spots[i].full_name);
        CHECK(one.spots[i].at.x == other.spots[i].at.x);
        CHECK(one.spots[i].at.y == other.spots[i].at.y);
    }
}

TEST_CASE("walking the wire meets every point from R to C of the valve's path") {
    const furnace::Model& model = model_of(kInduced);
    const Ladder ladder = lay_out(model);
    std::vector<std::string> met;
    int node = model.find_test_point("rollout.in");
    for (int steps = 0; steps < 40; ++steps) {
        met.push_back(model.test_point_name(node));
        const std::optional<int> next = next_point_along(ladder, node, Direction::right);
        if (!next || *next == model.wiring.common)
            break;
        CHECK(next_point_along(ladder, *next, Direction::left) == node);
        node = *next;
    }
    CHECK(met == std::vector<std::string>{"rollout.in.pin", "rollout.out.pin", "board.track_rollout",
                                          "limit.in.pin", "limit.out.pin", "board.track_limit",
                                          "pressure_switch.in.pin", "pressure_switch.out.pin",
                                          "board.track_pressure", "board.valve_feed.pin", "valve.hot.pin",
                                          "valve.common.pin"});
}

TEST_CASE("steps between points go on through splices, and up and down to the next row") {
    const furnace::Model& model = model_of(kInduced);
    const Ladder ladder = lay_out(model);
    for (int i = 0; i < static_cast<int>(ladder.spots.size()); ++i)
        for (const Direction d : {Direction::left, Direction::right, Direction::up, Direction::down})
            for (const Stride stride : {Stride::terminals, Stride::ends})
                if (const std::optional<int> next = next_spot_along(ladder, i, d, stride)) {
                    const ImVec2 a = ladder.spots[static_cast<std::size_t>(i)].at;
                    const ImVec2 b = ladder.spots[static_cast<std::size_t>(*next)].at;
                    INFO(ladder.spots[static_cast<std::size_t>(i)].full_name
                         << " to " << ladder.spots[static_cast<std::size_t>(*next)].full_name);
                    CHECK((d != Direction::left || b.x < a.x));
                    CHECK((d != Direction::right || b.x > a.x));
                    CHECK((d != Direction::up || b.y < a.y));
                    CHECK((d != Direction::down || b.y > a.y));
                }
    // A parked tap: its run ends in the motor, whose next point is the common's screw on the board.
    CHECK(next_point_along(ladder, model.find_test_point("board.park_1"), Direction::right) ==
          model.wiring.find_place("board.blower_neutral"));
}

TEST_CASE("no words lie over others or are cut off, fitted and zoomed") {
    const std::string call = GENERATE(kInduced, kNatural);
    const canvas::ThemeId theme =
        GENERATE(canvas::ThemeId::Paper, canvas::ThemeId::Basement, canvas::ThemeId::Projector);
    struct Size {
        ImVec2 pixels;
        float scale;
    };
    const Size size = GENERATE(Size{{776, 576}, 1}, Size{{1150, 860}, 1}, Size{{1150, 860}, 1.5F},
                               Size{{500, 380}, 1}, Size{{1500, 1150}, 1.35F});
    const float text = size.scale * canvas::theme(theme).text_factor;
    Pane pane(call, size.pixels, theme, text);
    for (int zooms = 0; zooms < 6; ++zooms) {
        pane.settle();
        INFO(call << ", " << canvas::theme(theme).name << ", " << size.pixels.x << " x " << size.pixels.y
                  << ", zoomed " << zooms);
        CHECK(joined(pane.screen.probe.problems()) == "");
        pane.view.place.zoom_about(pane.area.centre(), 1.25F);
        pane.view.held = DiagramView::Held::by_hand;
    }
}

namespace {

struct Use {
    const char* name;
    ImVec2 share; ///< of the window that the pane has, or had when this was written
    bool shows_all;
};
const std::array<Use, 2> kUses{{{"call", {0.51F, 0.64F}, false}, {"explore", {0.62F, 0.5F}, true}}};

struct Window {
    ImVec2 size;
    float percent;
    canvas::ThemeId theme = canvas::ThemeId::Paper;

    [[nodiscard]] float scale() const {
        const canvas::Theme& look = canvas::theme(theme);
        return platform::design_scale(size.y, platform::text_percent_in(size, percent, look), look);
    }
};

ImVec2 pane_in(const Window& window, const Use& use) {
    return {std::round(window.size.x * use.share.x), std::round(window.size.y * use.share.y)};
}

/// The names that lie on a symbol.
std::vector<std::string> names_on_symbols(const Pane& pane) {
    std::vector<std::string> found;
    for (const canvas::LayoutProbe::Text& text : pane.screen.probe.texts()) {
        if (text.layer != 0 || !pane.view.fitted_to.holds(text.ink.centre()))
            continue;
        const canvas::Rect ink = text.ink.shrunk(1);
        for (const Symbol& symbol : pane.ladder.symbols) {
            const canvas::Rect body = body_of(pane.view.place, symbol);
            if (ink.min.x < body.max.x && body.min.x < ink.max.x && ink.min.y < body.max.y &&
                body.min.y < ink.max.y)
                found.push_back(text.words + " on " + symbol.name);
        }
    }
    return found;
}

std::size_t words_on(const Pane& pane) {
    return pane.screen.probe.texts().size();
}

/// 1280x720 with text of 150 %, as a call shows it.
const Window kLargeText{{1280, 720}, 150};

Pane large_text_pane() {
    return Pane(kInduced, pane_in(kLargeText, kUses[0]), kLargeText.theme, kLargeText.scale());
}

bool is_in_sight(Pane& pane, int spot) {
    return pane.view.fitted_to.holds(pane.place_of(spot));
}

bool says(const Pane& pane, const std::string& words) {
    const auto& texts = pane.screen.probe.texts();
    return std::any_of(texts.begin(), texts.end(),
                       [&](const auto& text) { return text.words.find(words) != std::string::npos; });
}

} // namespace

TEST_CASE("no name is printed over another or over a symbol, opened and whole, however large the text") {
    const std::string call = GENERATE(kInduced, kNatural);
    const float percent = GENERATE(100.0F, 150.0F, 200.0F);
    const ImVec2 size =
        GENERATE(ImVec2{1280, 720}, ImVec2{1600, 1000}, ImVec2{1920, 1080}, ImVec2{2560, 1440});
    const canvas::ThemeId theme = GENERATE(canvas::ThemeId::Paper, canvas::ThemeId::Projector);
    const Window window{size, percent, theme};
    for (const Use& use : kUses) {
        Pane pane(call, pane_in(window, use), theme, window.scale());
        pane.view.shows_all = use.shows_all;
        if (use.shows_all)
            pane.view.carried.assign(pane.bundle.site.model.wiring.netlist.node_names.size(),
                                     Carried::volts_24);
        const auto check = [&](const char* how) {
            INFO(call << ", " << use.name << ", " << size.x << " x " << size.y << " at " << percent << " %, "
                      << canvas::theme(theme).name << ", " << how);
            CHECK(joined(pane.screen.probe.problems()) == "");
            CHECK(joined(names_on_symbols(pane)) == "");
            CHECK(words_on(pane) > 12);
        };
        pane.settle();
        CHECK(bears_letters(pane.view.place, 11 * window.scale()));
        check("as it opens");
        pane.view.fit_to(pane.view.fitted_to, pane.ladder);
        pane.settle();
        check("whole");
    }
}

TEST_CASE("a halo keeps off other words, and eats into none that it reaches") {
    using canvas::Type;
    test::Headless screen({400, 200});
    screen.frame([&](const canvas::Canvas& canvas) {
        LabelPlacer placer(canvas, {{0, 0}, {400, 200}});
        const float line = canvas::line_height(canvas, Type::Minimum);
        const auto at = [](float y) { return LabelPlacer::Choice{{200, std::round(y)}}; };
        const auto place = [&](std::string_view words, float y, float other_y) {
            const std::array<LabelPlacer::Choice, 2> choices{at(y), at(other_y)};
            const auto placed = placer.place(words, Type::Minimum, choices);
            REQUIRE(placed);
            return *placed;
        };
        const auto below = place("BK", 100, 100);
        CHECK_FALSE(below.needs_halo());
        const float close = std::round(100 - line * (1 - 2 * kEmptyOfLine) - 1); // ink to ink
        const float base = close + line * (1 - kEmptyOfLine) + 0.1F;
        SECTION("letters that hang down over a line need one, others do not") {
            placer.discourage({{100, base}, {300, base + line * kEmptyOfLine}});
            CHECK(place("main", close, 20).ink.min.y > 50);
            placer.discourage({{100, 20 + line * (1 - kEmptyOfLine)}, {300, 20 + line}});
            const auto hanging = place("plug", 20, 20);
            CHECK(hanging.hangs_over_lines);
            CHECK(hanging.needs_halo());
        }
        SECTION("where it would reach other words, a place farther off is taken") {
            placer.discourage({{100, base}, {300, base + line * kEmptyOfLine}});
            const auto hanging = place("plug", close, 20);
            CHECK(hanging.ink.max.y < 50);
            CHECK_FALSE(hanging.crowds_words);
        }
        SECTION("where there is none, the letters of both lie over the halo") {
            placer.discourage({{100, base}, {300, base + line * kEmptyOfLine}});
            const auto hanging = place("plug", close, close);
            CHECK(hanging.crowds_words);
            const canvas::Colour letters = canvas::hex(0x123456), halo = canvas::hex(0xABCDEF);
            placer.letter(below, "BK", Type::Minimum, letters);
            placer.letter(hanging, "plug", Type::Minimum, letters, halo);
            const int before = canvas.list->VtxBuffer.Size;
            placer.draw_halos();
            placer.draw_letters();
            std::vector<ImU32> drawn;
            for (int i = before; i < canvas.list->VtxBuffer.Size; ++i)
                drawn.push_back(canvas.list->VtxBuffer[i].col);
            const auto first = std::find(drawn.begin(), drawn.end(), canvas::packed(letters));
            REQUIRE(first != drawn.end());
            CHECK(std::count(drawn.begin(), first, canvas::packed(halo)) > 0);
            CHECK(std::count(first, drawn.end(), canvas::packed(halo)) == 0);
        }
    });
}

TEST_CASE("a sheet whose letters would not fit opens in part, where the leads or the focus are") {
    Pane pane = large_text_pane();
    const auto spot = [&](const char* name) { return pane.ladder.spot_of_node(pane.node(name)); };
    pane.settle();
    CHECK_FALSE(pane.view.shows_whole(pane.view.fitted_to, pane.ladder));
    CHECK(pane.view.place.to_screen(pane.ladder.bounds).min.x == Approx(pane.view.fitted_to.min.x));
    CHECK(pane.view.place.to_screen(pane.ladder.bounds).min.y == Approx(pane.view.fitted_to.min.y));
    CHECK(says(pane, "Part of the sheet"));
    CHECK_FALSE(is_in_sight(pane, spot("valve.hot")));
    pane.view.focus = view::Thing{bench::Word::point, pane.node("valve.hot")};
    pane.settle();
    CHECK(is_in_sight(pane, spot("valve.hot")));
    CHECK_FALSE(is_in_sight(pane, spot("panel.line")));
    pane.act("blower-door off");
    pane.act("burner-door off");
    pane.act("leads rollout.in board.C");
    pane.view.focus = {};
    pane.settle();
    CHECK(is_in_sight(pane, spot("rollout.in")));
}

TEST_CASE("Fit shows all of a sheet that opened in part, and once more a part that can be read") {
    Pane pane = large_text_pane();
    pane.settle();
    const float opened = pane.view.place.zoom;
    pane.view.take_keyboard = true;
    pane.settle();
    pane.screen.tap(platform::Key::Home);
    pane.settle();
    CHECK(pane.view.shows_whole(pane.view.fitted_to, pane.ladder));
    CHECK(says(pane, "Fit again"));
    pane.screen.tap(platform::Key::Home);
    pane.settle();
    CHECK(pane.view.place.zoom == Approx(opened));
    CHECK_FALSE(pane.view.shows_whole(pane.view.fitted_to, pane.ladder));
}

namespace {

/// Doors off, black parked on common, and the keyboard walking red along the wire.
void walk_from_rollout(Pane& pane) {
    pane.act("blower-door off");
    pane.act("burner-door off");
    pane.act("leads rollout.in board.C");
    pane.view.take_keyboard = true;
    pane.settle();
    pane.screen.tap(platform::Key::K);
    pane.settle();
}

} // namespace

TEST_CASE("the sheet follows who walks the wire") {
    Pane pane = large_text_pane();
    walk_from_rollout(pane);
    const ImVec2 before = pane.view.place.offset;
    for (int i = 0; i < 8; ++i) {
        pane.screen.tap(platform::Key::Right);
        pane.settle();
        INFO(pane.ladder.spot(pane.view.cursor).full_name);
        CHECK(is_in_sight(pane, pane.view.cursor));
    }
    CHECK(pane.view.place.offset.x < before.x);
    CHECK(pane.wanted.lead == view::Wanted::Lead::red);
}

TEST_CASE("fitted into a pane of a small window the parts and the screws of the thermostat can be read") {
    Pane pane(kInduced);
    pane.settle();
    std::set<std::string> words;
    for (const canvas::LayoutProbe::Text& text : pane.screen.probe.texts())
        words.insert(text.words);
    for (const char* name : {"L",
                             "N",
                             "R",
                             "C",
                             "W",
                             "G",
                             "Y",
                             "rollout",
                             "limit",
                             "pressure switch",
                             "gas valve",
                             "igniter",
                             "flame",
                             "door switch",
                             "disconnect",
                             "board",
                             "fuse 3 A",
                             "inducer motor",
                             "blower motor",
                             "thermostat, living room"}) {
        INFO(name);
        CHECK(words.count(name) == 1);
    }
}

TEST_CASE("a click on a point asks for it; with a lead in hand the lead goes there") {
    Pane pane(kInduced);
    pane.settle();
    for (int i = 0; i < static_cast<int>(pane.ladder.spots.size()); ++i) {
        const Spot& spot = pane.ladder.spots[static_cast<std::size_t>(i)];
        INFO(spot.full_name);
        pane.view.lead_in_hand = view::Wanted::Lead::none;
        pane.screen.click(pane.place_of(i));
        pane.settle();
        CHECK(pane.wanted.focus == view::Thing{bench::Word::point, spot.node});
        CHECK(pane.wanted.lead == view::Wanted::Lead::none);
        pane.view.lead_in_hand = view::Wanted::Lead::red;
        pane.screen.click(pane.place_of(i));
        pane.settle();
        CHECK_FALSE(pane.wanted.focus);
        CHECK(pane.wanted.lead == view::Wanted::Lead::red);
        CHECK(pane.wanted.lead_point == spot.node);
    }
}

TEST_CASE("with a lead in hand the nearest point wins within 40 pixels") {
    Pane pane(kInduced);
    pane.settle();
    const std::vector<ImVec2> places{{100, 100}, {130, 100}};
    CHECK(nearest_spot(places, {112, 100}, kReach_px) == 0);
    CHECK(nearest_spot(places, {118, 100}, kReach_px) == 1);
    CHECK(nearest_spot(places, {100, 60}, kReach_px) == 0);
    CHECK_FALSE(nearest_spot(places, {100, 59}, kReach_px));
}

TEST_CASE("every wire can be clicked") {
    const std::string call = GENERATE(kInduced, kNatural);
    Pane pane(call, {1900, 1400});
    pane.settle();
    for (const Wire& wire : pane.ladder.wires) {
        INFO(call << ": " << wire.name);
        pane.screen.click(pane.view.place.to_screen(wire.ferrule));
        pane.settle();
        CHECK(pane.wanted.focus == view::Thing{bench::Word::wire, wire.element});
    }
}

TEST_CASE("dragging moves the sheet and picks nothing; the wheel zooms about the pointer; Home fits again") {
    Pane pane(kInduced);
    pane.settle();
    const canvas::Transform fitted = pane.view.place;
    pane.screen.queue.push(platform::PointerEvent{300, 300});
    pane.screen.queue.push(platform::ButtonEvent{platform::MouseButton::Left, true});
    pane.settle();
    for (const ImVec2 p : {ImVec2{340, 320}, ImVec2{360, 330}}) {
        pane.screen.queue.push(platform::PointerEvent{p.x, p.y});
        pane.settle();
    }
    pane.screen.queue.push(platform::ButtonEvent{platform::MouseButton::Left, false});
    pane.settle();
    CHECK(pane.view.place.offset.x == Approx(fitted.offset.x + 60));
    CHECK(pane.view.place.offset.y == Approx(fitted.offset.y + 30));
    CHECK_FALSE(pane.wanted.focus);

    const ImVec2 under = pane.view.place.to_drawing({360, 330});
    pane.screen.queue.push(platform::WheelEvent{1, 0});
    pane.settle();
    CHECK(pane.view.place.zoom > fitted.zoom);
    CHECK(pane.view.place.to_screen(under).x == Approx(360).margin(0.01));
    pane.view.take_keyboard = true;
    pane.settle();
    pane.screen.tap(platform::Key::Home);
    pane.settle();
    CHECK(pane.view.place.zoom == Approx(fitted.zoom));
}

TEST_CASE("by the keyboard alone: walking the wire takes the red lead from screw to screw") {
    Pane pane(kInduced);
    walk_from_rollout(pane);
    CHECK(pane.view.walking);
    pane.screen.tap(platform::Key::Right);
    pane.settle();
    CHECK(pane.wanted.lead == view::Wanted::Lead::red);
    CHECK(pane.wanted.lead_point == pane.node("rollout.out"));
    pane.screen.tap(platform::Key::Right);
    pane.settle();
    CHECK(pane.wanted.lead_point == pane.node("board.rollout_return"));
    pane.screen.tap(platform::Key::Escape);
    pane.settle();
    CHECK_FALSE(pane.view.walking);
    const float x = pane.view.place.offset.x;
    pane.screen.tap(platform::Key::Right); // now it moves the sheet
    pane.settle();
    CHECK(pane.wanted.lead == view::Wanted::Lead::none);
    CHECK(pane.view.place.offset.x < x);
}

TEST_CASE("a lifted wire hangs beside its pin, and both can be picked") {
    Pane pane(kInduced);
    pane.act("disconnect off");
    pane.act("blower-door off");
    const int terminal = [&] {
        const auto& all = pane.bundle.site.model.wiring.terminals;
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].name == "board.W")
                return static_cast<int>(i);
        return -1;
    }();
    pane.settle();
    const int lug = pane.ladder.lug_spot[static_cast<std::size_t>(terminal)];
    const int pin = pane.ladder.pin_spot[static_cast<std::size_t>(terminal)];
    const ImVec2 seated = pane.place_of(lug);
    pane.act("lift board.W");
    pane.settle();
    const ImVec2 lifted = pane.place_of(lug);
    CHECK(std::hypot(lifted.x - seated.x, lifted.y - seated.y) > 5);
    const bool says_off = std::any_of(pane.screen.probe.texts().begin(), pane.screen.probe.texts().end(),
                                      [](const auto& text) { return text.words == "off"; });
    CHECK(says_off);
    pane.screen.click(lifted);
    pane.settle();
    CHECK(pane.wanted.focus == view::Thing{bench::Word::point, pane.node("board.W.lug")});
    pane.screen.click(pane.place_of(pin));
    pane.settle();
    CHECK(pane.wanted.focus == view::Thing{bench::Word::point, pane.node("board.W")});
}

TEST_CASE("time of a frame", "[.time]") {
    Pane pane(kInduced, {1920, 1080}, canvas::ThemeId::Paper, 1.35F);
    pane.settle();
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 200; ++i)
        pane.settle();
    const auto end = std::chrono::steady_clock::now();
    std::cout << std::chrono::duration<double, std::milli>(end - start).count() / 200 << " ms a frame\n";
    const ImDrawData* data = ImGui::GetDrawData();
    std::cout << data->TotalVtxCount << " vertices\n";
}

TEST_CASE("a reading is stamped on the point that it proves, and no other; leads carry their letters") {
    Pane pane(kInduced);
    pane.act("blower-door off");
    pane.act("door-switch on");
    pane.act("meter ac-volts");
    const auto said = [&](const std::string& words) {
        return std::count_if(pane.screen.probe.texts().begin(), pane.screen.probe.texts().end(),
                             [&](const auto& text) { return text.words == words; });
    };
    pane.settle();
    const auto plain = said("R"); // screws and ferrules
    pane.act("leads board.R board.C");
    pane.act("wait 4s");
    pane.settle();
    CHECK(said("R") >= plain);
    CHECK(said("B") == 1);
    const view::Known known = view::known_of(pane.visit, pane.bundle.scenario);
    const std::vector<view::Stamp> stamps = view::stamps_of(known);
    REQUIRE(stamps.size() == 1);
    CHECK(stamps.front().live);
    CHECK(said(stamps.front().words) == 1);
    CHECK(joined(pane.screen.probe.problems()) == "");
}

TEST_CASE("a stamp hatches out when door, power, thermostat or gas change, and with age") {
    const auto is_stale_after = [](const std::string& line) {
        Pane pane(kInduced);
        pane.act("blower-door off");
        pane.act("door-switch on");
        pane.act("meter ac-volts");
        pane.act("leads board.R board.C");
        pane.act("wait 4s");
        pane.act("leads-off");
        pane.act(line);
        const std::vector<view::Stamp> stamps =
            view::stamps_of(view::known_of(pane.visit, pane.bundle.scenario));
        REQUIRE(stamps.size() == 1);
        return stamps.front().stale;
    };
    for (const char* line :
         {"thermostat-set 72F", "thermostat-fan on", "breaker off", "disconnect off", "door-switch off",
          "blower-door on", "burner-door off", "gas-cock off", "wait 300s"}) {
        INFO(line);
        CHECK(is_stale_after(line));
    }
    for (const char* line : {"look filter", "filter off", "wait 1s"}) {
        INFO(line);
        CHECK_FALSE(is_stale_after(line));
    }
}
