"""The published hand methods for a motor's load, on whole columns at once with numpy: what a joint estimate is timed against.

Usage: python3 hand-methods.py SHEET.csv [repeats]

Reads a fleet sheet, one reading a motor. Prints one JSON object: motors, microseconds of processor time a motor
for the arithmetic alone (reading the file is not counted), and, where the sheet carries `true_load` and `true_efficiency`, the mean
absolute errors in points by what was read.

Methods: US Department of Energy fact sheet "Determining Electric Motor Load and Efficiency": input power over rated input, slip
over rated slip corrected by the square of the voltage ratio, current ratio times voltage ratio. The first that can be formed
counts, in this order. Where no efficiency is stamped, the minimum nominal values of old design B motors by size (read in one handbook
table) stand in; efficiency is taken as rated from half load up and 3 points lower below (common practice).
"""

import csv
import json
import statistics
import sys
import time
from pathlib import Path

import numpy as np

KW_PER_HP = 0.7457
OLD_DESIGN = Path(__file__).parents[2] / "reference-data" / "efficiency" / "us-old-design.csv"
with open(OLD_DESIGN, encoding="utf-8", newline="") as table:
    BANDS = list(csv.DictReader(table))
OLD_HP = np.array([float(band["rated_power_hp_min"]) for band in BANDS])
OLD_EFFICIENCY = np.array([float(band["nominal_efficiency_pct"]) for band in BANDS])


def column(rows, name):
    return np.array([float(row[name]) if row.get(name) else np.nan for row in rows])


def mean_of(rows, one, three):
    alone = column(rows, one)
    phases = np.stack([column(rows, name) for name in three]).mean(axis=0)
    return np.where(np.isnan(alone), phases, alone)


def read_sheet(path):
    with open(path, encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    kw = column(rows, "rated_power_kw")
    return {
        "rated_kw": np.where(np.isnan(kw), column(rows, "rated_power_hp") * KW_PER_HP, kw),
        "rated_volts": column(rows, "rated_voltage_v"),
        "rated_amps": column(rows, "rated_current_a"),
        "rated_rpm": column(rows, "rated_speed_rpm"),
        "rated_hz": column(rows, "rated_frequency_hz"),
        "efficiency": column(rows, "nominal_efficiency_pct"),
        "volts": mean_of(rows, "voltage_v", ["voltage_ab_v", "voltage_bc_v", "voltage_ca_v"]),
        "amps": mean_of(rows, "current_a", ["current_a_a", "current_b_a", "current_c_a"]),
        "kw": column(rows, "input_power_kw"),
        "rpm": column(rows, "shaft_speed_rpm"),
        "true_load": column(rows, "true_load"),
        "true_efficiency": column(rows, "true_efficiency"),
    }


def estimate(sheet):
    """Load fraction and efficiency of every motor, by the first method that can be formed."""
    old = OLD_EFFICIENCY[np.searchsorted(OLD_HP, sheet["rated_kw"] / KW_PER_HP, side="right") - 1]
    efficiency = np.where(np.isnan(sheet["efficiency"]), old, sheet["efficiency"]) / 100
    ratio = np.where(np.isnan(sheet["volts"]), 1.0, sheet["volts"] / sheet["rated_volts"])
    poles = 2 * np.floor(60 * sheet["rated_hz"] / sheet["rated_rpm"])
    synchronous = 120 * sheet["rated_hz"] / poles
    by_power = sheet["kw"] * efficiency / sheet["rated_kw"]
    by_slip = (synchronous - sheet["rpm"]) / (synchronous - sheet["rated_rpm"]) * ratio**2
    by_amps = sheet["amps"] / sheet["rated_amps"] * ratio
    load = np.where(np.isnan(by_power), np.where(np.isnan(by_slip), by_amps, by_slip), by_power)
    at_load = np.where(load < 0.5, efficiency - 0.03, efficiency)
    return load, at_load


def errors(sheet, load, efficiency):
    truth = sheet["true_load"]
    if np.all(np.isnan(truth)):
        return None
    off = 100 * np.abs(load - truth)
    has_power = ~np.isnan(sheet["kw"])
    has_speed = ~np.isnan(sheet["rpm"]) & ~has_power
    only_amps = ~has_power & ~has_speed
    return {
        "load": float(np.nanmean(off)),
        "load_with_power": float(np.nanmean(off[has_power])),
        "load_speed_only": float(np.nanmean(off[has_speed])),
        "load_amps_only": float(np.nanmean(off[only_amps])),
        "efficiency": float(np.nanmean(100 * np.abs(efficiency - sheet["true_efficiency"]))),
    }


def main():
    repeats = int(sys.argv[2]) if len(sys.argv) > 2 else 50
    inner = 20
    sheet = read_sheet(sys.argv[1])
    motors = len(sheet["rated_kw"])
    with np.errstate(invalid="ignore", divide="ignore"):
        load, efficiency = estimate(sheet)
        taken = []
        for _ in range(repeats):
            start = time.process_time()
            for _ in range(inner):
                estimate(sheet)
            taken.append((time.process_time() - start) / inner)
    print(json.dumps({"motors": motors, "microseconds": 1e6 * statistics.median(taken) / motors, "errors": errors(sheet, load, efficiency)}))


main()
