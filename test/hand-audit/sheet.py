"""The sheet of the hand audit: sheet.md and expected.json from the three CSV files of this folder.

Nothing of the project is used: sums of decimals are exact fractions, Student's t of whole degrees is its finite
trigonometric series, F(2, m) its closed form.

    python3 -B test/hand-audit/sheet.py
"""

import csv
import json
import math
from fractions import Fraction
from pathlib import Path

from arithmetic import Z, wilson
from estimates import Group, number, put, rows, say, table, text, title, vectors

HERE = Path(__file__).parent
VERTEX = 0.012
COUNT_FINGERS = 1.9
COHORTS = {"all": None, "technique=manual": "manual", "technique=laser-assisted": "laser"}


def read(name):
    with open(HERE / name, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def log_mar(written):
    if written == "":
        return None
    return COUNT_FINGERS if written == "CF" else -math.log10(float(written))


def vector(magnitude, axis):
    """Doubled angle; sines and cosines of multiples of 30° and 45° are those of school."""
    return magnitude * math.cos(math.radians(2 * axis)), magnitude * math.sin(math.radians(2 * axis))


def corneal(k):
    """Steep − flat at the meridian of the greater power."""
    k1, k2 = float(k["K1"]), float(k["K2"])
    return vector(abs(k1 - k2), float(k["A1"] if k1 > k2 else k["A2"]))


def at_cornea(exam):
    """The correction in plus notation, each meridian moved to the cornea; undefined where the axis is not known."""
    sphere, cylinder = float(exam["Sph"]), float(exam["Cyl"])
    if cylinder == 0:
        return (0.0, 0.0), "no cylinder: the zero vector"
    if exam["Axis"] == "":
        return None, "axis not recorded: no vector"
    low, high = sphere + cylinder, sphere
    axis = (float(exam["Axis"]) + 90) % 180 or 180
    moved = [power / (1 - VERTEX * power) for power in (low, high)]
    size = moved[1] - moved[0]
    return vector(size, axis), f"{low:.2f} and {high:.2f} become {moved[0]:.6f} and {moved[1]:.6f}: {size:.6f} @ {axis:.0f}"


def load():
    """One entry an operated eye, with its examinations before and after."""
    eyes = []
    exams, keratometries = read("lane.csv"), read("keratometer.csv")
    for operation in read("theatre.csv"):
        def mine(rows, eye=(operation["Case"], operation["Side"])):
            return [row for row in rows if (row["Case"], row["Side"]) == eye]
        own = mine(exams)
        eyes.append({
            "code": f"{operation['Case']}{operation['Side']}", "patient": operation["Case"], "method": operation["Method"],
            "operation": operation, "excluded": float(operation["Length"]) > 30,
            "before": next(row for row in own if row["Date"] < operation["Date"]),
            "after": next((row for row in own if row["Date"] > operation["Date"]), None),
            "cornea": next((corneal(row) for row in mine(keratometries)), None),
        })
    return eyes


def in_cohort(eye, method):
    return method is None or eye["method"] == method


def cohort(eyes, method):
    return [eye for eye in eyes if in_cohort(eye, method)]


def flow(eyes):
    title("2 Eye flow", 2)
    for name, method in COHORTS.items():
        mine = cohort(eyes, method)
        eligible = [eye for eye in mine if not eye["excluded"]]
        seen = [eye for eye in eligible if eye["after"]]
        axes = [eye for eye in seen if at_cornea(eye["after"])[0]]
        near = [eye for eye in eligible if abs(float(eye["operation"]["Aim"])) > 0.5]
        counts = {
            ("eyes_operated", "count"): mine,
            ("eyes_operated", "patients"): {eye["patient"] for eye in mine},
            ("flow:refraction", "excluded:Axial length over 30 mm"): [eye for eye in mine if eye["excluded"]],
            ("flow:refraction", "not_yet_due"): [],
            ("flow:refraction", "no_visit"): [eye for eye in eligible if not eye["after"]],
            ("flow:refraction", "analysed"): seen,
            ("flow:astigmatism", "not_recorded"): [eye for eye in seen if eye not in axes],
            ("flow:astigmatism", "analysed"): axes,
            ("flow:uncorrected", "near_target"): near,
            ("flow:uncorrected", "analysed"): [eye for eye in seen if eye not in near],
            ("flow:corrected", "analysed"): seen,
        }
        title(f"`{name}`", 3)
        for (measure, statistic), some in counts.items():
            listed = sorted(eye["code"] if isinstance(eye, dict) else eye for eye in some)
            rows.append({"measure": measure, "group": name, "statistic": statistic, "value": len(some)})
            say(f"- `{measure}` `{statistic}` = **{len(some)}**: {', '.join(listed) or 'none'}")
        due = Group("completeness", name, [(eye["patient"], 1 if eye["after"] else 0) for eye in eligible])
        n = due.G if len(seen) == due.n else float(due.n / due.deff)
        how = f"{len(seen)}/{due.n} due eyes of {due.G} patients, score interval at n {number(n)}"
        due.put("share", len(seen) / due.n, how, wilson(len(seen) / due.n, n, Z))


INTRODUCTION = """Made by `sheet.py` from the three files of this folder, with exact fractions and no line of the project; every step can
be followed with pencil and pocket calculator. Numbers are shown to 6 decimals; `expected.json` has them in full.

Formulas are those of the project's methods: intervals from patients' sums, score intervals at the eyes divided by the
design effect. With fewer than 5 patients who had both eyes done, fellow eyes count as identical: design effect Σm²/n, m =
eyes of the patient in the group. A share of exactly 0 or 1 takes the number of patients for n. Below 5 patients there is
no interval. An interval of a standard deviation is left out where it hangs on the correlation of fellow eyes (v_J < v_N)."""


def eye_row(eye):
    """One line of the table of eyes; the errors are kept for the sections below."""
    operation, exam = eye["operation"], eye["after"]
    start = [eye["code"], eye["method"]]
    if not exam:
        return [*start, "", "", operation["Predicted"], "", operation["Aim"], "", "no visit after surgery"]
    eye["se"] = Fraction(exam["Sph"]) + Fraction(exam["Cyl"]) / 2
    eye["error"] = eye["se"] - Fraction(operation["Predicted"])
    eye["target error"] = eye["se"] - Fraction(operation["Aim"])
    written = f"{exam['Sph']} {exam['Cyl']} × {exam['Axis'] or '(blank)'}"
    errors = [number(eye["se"]), operation["Predicted"], number(eye["error"]), operation["Aim"], number(eye["target error"])]
    return [*start, written, *errors, "excluded: longer than 30 mm" if eye["excluded"] else ""]


def eye_table(eyes):
    title("The hand audit: twelve eyes of eight patients", 1)
    say(*INTRODUCTION.split("\n"))
    title("1 The eyes", 2)
    say("SE = sphere + cylinder/2. Prediction error = SE − predicted; target error = SE − aim.", "")
    head = ["eye", "technique", "refraction after", "SE", "predicted", "error", "aim", "target error", "remark"]
    table(head, [eye_row(eye) for eye in eyes])


def each_cohort(eyes, use):
    for name, method in COHORTS.items():
        use(name, cohort(eyes, method))


def signed_errors(seen):
    title("3 Refractive accuracy", 2)
    say("Within a limit: |error| rounded to 0.000001 and compared, the limit itself inside.")
    for measure, key in (("prediction_error", "error"), ("target_error", "target error")):
        each_cohort(seen, lambda name, some: Group(measure, name, [(e["patient"], e[key]) for e in some]).errors())
    title("Prediction error, centred", 3)
    say("Lens models A and B have 5 analysed eyes each; below 10 no model is centred.", "")
    each_cohort(seen, lambda name, _: put("prediction_error_centred", name, "n", 0, 0, 0, f"none of the eyes of {name}"))
    title("Cylinder as recorded", 3)
    say("Its size alone: whatever the axis, and where the axis is blank.")

    def recorded(name, some):
        sizes = [(e["patient"], abs(Fraction(e["after"]["Cyl"]))) for e in some]
        Group("refractive_cylinder_after_recorded", name, sizes).magnitudes()
    each_cohort(seen, recorded)


def pair(vector):
    return f"({number(vector[0])}, {number(vector[1])})" if vector else "missing"


def double_angle(seen):
    title("4 Astigmatism at the cornea", 2)
    say("x = C cos 2a, y = C sin 2a with C ≥ 0 at the steep meridian, or at the axis of the plus cylinder. A refraction is",
        "moved from 12 mm to the cornea meridian by meridian, F/(1 − 0.012 F), and the difference taken then.", "")
    body = []
    for eye in seen:
        eye["residual"], working = at_cornea(eye["after"])
        body.append([eye["code"], pair(eye["cornea"]), working, pair(eye["residual"])])
    table(["eye", "cornea before (x, y)", "correction in its two meridians", "refraction after (x, y)"], body)
    say("H6L has no axis and is in neither summary.")
    with_axis = [eye for eye in seen if eye["residual"]]
    for measure, key in (("corneal_cylinder_before", "cornea"), ("refractive_cylinder_after", "residual")):
        each_cohort(with_axis, lambda name, some: vectors(measure, name, [(e["patient"], *e[key]) for e in some]))


def aimed_far(eyes):
    return [eye for eye in eyes if abs(float(eye["operation"]["Aim"])) <= 0.5]


def acuity(eligible, seen):
    title("5 Visual acuity", 2)
    say("logMAR = −log10 of the decimal acuity; counting fingers (CF) stands for 1.9 in the means. A line is reached at its",
        "nominal tenth + 0.005. Uncorrected acuity: only eyes aimed within ±0.50 D, so without H2R (aim −2.00).")
    for measure, eyes, when, column in (
        ("cdva", seen, "after", "Corrected"), ("udva", aimed_far(seen), "after", "Unaided"),
        ("cdva_before", eligible, "before", "Corrected"), ("udva_before", aimed_far(eligible), "before", "Unaided"),
    ):
        known = [(eye, log_mar(eye[when][column])) for eye in eyes]
        for name, method in COHORTS.items():
            values = [(eye["patient"], value) for eye, value in known if value is not None and in_cohort(eye, method)]
            Group(measure, name, values).acuities()


def main():
    eyes = load()
    eye_table(eyes)
    flow(eyes)
    eligible = [eye for eye in eyes if not eye["excluded"]]
    seen = [eye for eye in eligible if eye["after"]]
    signed_errors(seen)
    double_angle(seen)
    acuity(eligible, seen)
    (HERE / "sheet.md").write_text("\n".join(text) + "\n", encoding="utf-8")
    (HERE / "expected.json").write_text(json.dumps(rows, ensure_ascii=False, indent=2) + "\n", encoding="utf-8")


main()
