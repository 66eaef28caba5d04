// SPDX-License-Identifier: MIT
#pragma once
#include <string_view>

namespace lightoff::lesson {

/// What counts how much: data of the school (scenarios/school/rubric.json), which a scenario may change. The
/// names in files are the names below.
struct Rubric {
    // A call: 100 in all.
    double look = 10.0;     ///< reproduced and looked at before anything was changed
    double step = 15.0;     ///< stopping step stated before the first change
    double isolate = 25.0;  ///< left with nothing but the cause
    double proof = 20.0;    ///< cause named, with nothing else left that fits
    double repair = 8.0;    ///< cause put right
    double behind = 7.0;    ///< and what was behind it
    double verify = 15.0;   ///< full cycle, values as left, everything put back
    double full_to = 1.5;   ///< of the coach's way: isolated by then earns all
    double none_from = 4.0; ///< and nothing from here on
    double needless_part = 5.0;
    double needless_most = 15.0;
    double work_minute = 2.0; ///< in the currency of the parts: of a test, and of a change besides its part
    // What a mark can't exceed.
    double cap_stop_work = 40.0;
    double cap_left = 40.0;       ///< bypass or leak left
    double cap_wrong = 50.0;      ///< cause wrong, or still there
    double cap_behind = 55.0;     ///< what was behind it still there
    double cap_guessed = 60.0;    ///< changed before it was proved
    double cap_unverified = 75.0; ///< no full cycle at the end
    // Safety, from 100.
    double slip = 2.0;
    double serious = 8.0;
    double undone_s = 5.0; ///< ended by then, unharmed: half
    // Work minutes.
    double par_free = 2.0;    ///< times par that cost nothing
    double ten_minutes = 1.0; ///< for every ten more
    double time_most = 5.0;
    // A tune-up: 100 in all.
    double checks = 30.0;
    double conditions = 25.0;
    double as_found = 15.0;
    double corrected = 15.0;
    double put_back = 15.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("look", "", self.look);
        visit("step", "", self.step);
        visit("isolate", "", self.isolate);
        visit("proof", "", self.proof);
        visit("repair", "", self.repair);
        visit("behind", "", self.behind);
        visit("verify", "", self.verify);
        visit("full_to", "", self.full_to);
        visit("none_from", "", self.none_from);
        visit("needless_part", "", self.needless_part);
        visit("needless_most", "", self.needless_most);
        visit("work_minute", "", self.work_minute);
        visit("cap_stop_work", "", self.cap_stop_work);
        visit("cap_left", "", self.cap_left);
        visit("cap_wrong", "", self.cap_wrong);
        visit("cap_behind", "", self.cap_behind);
        visit("cap_guessed", "", self.cap_guessed);
        visit("cap_unverified", "", self.cap_unverified);
        visit("slip", "", self.slip);
        visit("serious", "", self.serious);
        visit("undone", "s", self.undone_s);
        visit("par_free", "", self.par_free);
        visit("ten_minutes", "", self.ten_minutes);
        visit("time_most", "", self.time_most);
        visit("checks", "", self.checks);
        visit("conditions", "", self.conditions);
        visit("as_found", "", self.as_found);
        visit("corrected", "", self.corrected);
        visit("put_back", "", self.put_back);
    }
};

/// Sets the weight of that name; false if there is none.
bool set_weight(Rubric& rubric, std::string_view name, double value);

} // namespace lightoff::lesson
