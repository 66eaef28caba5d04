// SPDX-License-Identifier: MIT
#include "gui/paper/evidence.hpp"
#include "gui/paper/sheets.hpp"

namespace lightoff::paper {

void draw_notebook(const canvas::Canvas& canvas, canvas::Rect area, const view::Known& known,
                   NotebookView& view, view::Wanted&) {
    sheet::Column column(canvas, area, "notebook");
    column.title("Notebook");
    const int number = number_of(known, view.evidence);
    if (number == 0) {
        column.gap(4);
        column.note("Nothing has been read yet. A number is written down by itself once it has stood for two "
                    "seconds, a close look at once; anything else when it is kept.");
        return;
    }
    column.note("Press a reading to stand on it: the next strike, tag or value is by reading " +
                std::to_string(number) + ".");
    column.gap(4);
    if (view.evidence.picked != 0 && column.button("Stand on the last one again"))
        view.evidence.picked = 0;
    column.rule();
    if (const int picked = pick_reading(column, known, number, view.list); picked != 0)
        view.evidence.picked = picked;
}

} // namespace lightoff::paper
