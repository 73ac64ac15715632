"""How well a sheet could be read at all: a quadratic regression trained on many motors of the very world it is tried on.

Usage: python3 floor.py TRAIN.json TRY.json   (lists of {cells, load, efficiency}, all with the same set of readings)

It knows that world's spreads and loads, as no estimator of a real plant can; what it leaves is close to what nobody can do better.
Prints one JSON object: motors tried, mean absolute error and standard deviation of load and efficiency in points.
"""

import json
import sys

import numpy as np

CODE_LETTERS = "ABCDEFGHJKLM"
VOLTS = ("voltage_v", "voltage_ab_v", "voltage_bc_v", "voltage_ca_v")
AMPS = ("current_a", "current_a_a", "current_b_a", "current_c_a")
RIDGE = (3, 10, 30, 100, 300, 1000)


def mean_of(cells, names):
    values = [float(cells[name]) for name in names if name in cells]
    return sum(values) / len(values) if values else np.nan


def unbalance(cells):
    volts = [float(cells[name]) for name in VOLTS[1:] if name in cells]
    if not volts:
        return 0.0
    mean = sum(volts) / len(volts)
    return 100 * max(abs(value - mean) for value in volts) / mean


def features(cells):
    number = lambda name: float(cells[name]) if cells.get(name) else np.nan
    hertz, rpm = number("rated_frequency_hz"), number("rated_speed_rpm")
    kw = number("rated_power_kw") if "rated_power_kw" in cells else 0.7457 * number("rated_power_hp")
    poles = number("poles") if "poles" in cells else 2 * np.floor(60 * hertz / rpm)
    synchronous = 120 * hertz / poles
    volts, amps, year = mean_of(cells, VOLTS), mean_of(cells, AMPS), number("year_built")
    frame, grade, letter = cells.get("frame", ""), cells.get("efficiency_class", ""), cells.get("code_letter")
    apparent = np.sqrt(3) * volts * amps / 1000 / kw
    return [
        np.log(kw),
        *(poles == count for count in (2, 6, 8)),
        np.log(100 / number("nominal_efficiency_pct") - 1),
        year < 1965.5,
        1965.5 <= year < 1980,
        1980 <= year < 1998,
        year >= 1998,
        frame.endswith("U"),
        frame.endswith("T"),
        grade in ("premium", "IE3"),
        grade in ("energy-efficient", "IE2"),
        hertz == 50,
        np.log((synchronous - rpm) / synchronous),
        rpm % 5 == 0,
        number("rated_power_factor_pct"),
        np.sqrt(3) * number("rated_voltage_v") * number("rated_current_a") / 1000 / kw,
        CODE_LETTERS.index(letter) if letter else np.nan,
        number("service_factor"),
        volts / number("rated_voltage_v") - 1,
        unbalance(cells),
        (synchronous - number("shaft_speed_rpm")) / (synchronous - rpm),
        (synchronous - number("shaft_speed_rpm")) / synchronous,
        amps / number("rated_current_a"),
        number("input_power_kw") / kw,
        apparent,
        number("input_power_kw") / kw / apparent,
        number("ambient_c"),
        number("speed_accuracy_rpm"),
    ]


def table(motors):
    return np.array([[float(value) for value in features(motor["cells"])] for motor in motors])


class Scale:
    """Centres and widths of the training columns; columns that never vary are left out."""

    def __init__(self, columns):
        known = ~np.all(np.isnan(columns), axis=0)
        filled = np.where(known, columns, 0)
        self.mean, self.width = np.nanmean(filled, axis=0), np.nanstd(filled, axis=0)
        self.used = known & (self.width > 1e-9)

    def design(self, columns):
        """Constant, values, absences, all products of two, and cubes."""
        picked = columns[:, self.used]
        absent = np.isnan(picked)
        values = np.clip(np.where(absent, 0, (picked - self.mean[self.used]) / self.width[self.used]), -5, 5)
        linear = np.hstack([values, absent.astype(float)])
        one, two = np.triu_indices(linear.shape[1])
        return np.hstack([np.ones((len(linear), 1)), linear, linear[:, one] * linear[:, two], values**3])


def main():
    train, tried = (json.load(open(path, encoding="utf-8")) for path in sys.argv[1:3])
    columns = table(train)
    scale = Scale(columns)
    design, trial = scale.design(columns), scale.design(table(tried))
    square = design.T @ design
    result = {"motors": len(tried)}
    for target in ("load", "efficiency"):
        known = np.array([motor[target] for motor in train])
        truth = np.array([motor[target] for motor in tried])
        errors = []
        for ridge in RIDGE:
            weights = np.linalg.solve(square + ridge * np.eye(len(square)), design.T @ (known - known.mean()))
            errors.append(100 * (trial @ weights + known.mean() - truth))
        # The best ridge on the motors tried: a floor may be too low, never too high.
        best = min(errors, key=lambda error: np.abs(error).mean())
        result[target] = {"mean_absolute": float(np.abs(best).mean()), "sd": float(best.std())}
    print(json.dumps(result))


main()
