#!/usr/bin/python3
"""Writes ammonia.json and water.json beside this file.

Wants the Debian package python3-iapws. The tests read only the JSON: run this again when the states change.
"""

import json
import pathlib
import subprocess

from iapws._iapws import _Sublimation_Pressure
from iapws.ammonia import NH3
from iapws.iapws97 import _PSat_T, _TSat_P

PACKAGE = subprocess.run(
    ["dpkg-query", "--show", "--showformat=${Package} ${Version}", "python3-iapws"],
    check=True,
    capture_output=True,
    text=True,
).stdout

# K, kg/m3: compressed liquid, vapour, and both above the critical temperature (405.40 K).
STATES = [
    *[(200, rho) for rho in (730, 745)],
    *[(230, rho) for rho in (696, 720)],
    *[(260, rho) for rho in (657, 680, 700)],
    *[(300, rho) for rho in (602, 620, 650)],
    *[(340, rho) for rho in (540, 580, 630)],
    *[(380, rho) for rho in (450, 500, 600)],
    *[(400, rho) for rho in (380, 480)],
    *[(230, 0.1), (260, 0.5), (260, 1.5)],
    *[(300, rho) for rho in (0.01, 1, 5, 8)],
    *[(340, 2), (340, 20), (380, 10), (380, 50), (400, 80)],
    *[(420, rho) for rho in (1, 50, 150, 225, 300, 450)],
    *[(500, rho) for rho in (0.5, 30, 225, 400)],
    *[(650, 20), (650, 300)],
]
SATURATED = [200, 220, 240, 260, 273.15, 298.15, 320, 340, 360, 380, 395]
WATER = [273.16, 278.15, 283.15, 288.15, 293.15, 298.15, 303.15, 313.15, 333.15, 353.15, 373.15, 423.15, 523.15, 623.15]
BOILING = [700, 1000, 2000, 5000, 10000, 50000, 101325, 500000, 1000000, 10000000]
ICE = [60, 100, 150, 180, 200, 213.15, 223.15, 233.15, 243.15, 253.15, 258.15, 263.15, 268.15, 272.15, 273.15]


def digits(value, count):
    """Decimal text of a number, with so many significant digits."""
    return f"{value:#.{count}g}".rstrip(".")


def ammonia_state(temperature, density):
    state = NH3(T=temperature, rho=density)
    # MPa, kJ/(kg K), m/s
    values = {"pressure": state.P * 1e6, "cv": state.cv * 1e3, "cp": state.cp * 1e3, "speedOfSound": state.w}
    return {
        "temperature": temperature,
        "density": density,
        **{name: digits(value, 10) for name, value in values.items()},
    }


def ammonia_saturation(temperature):
    # kg/m3 and kPa, from a solver that stops at 1.5e-8: seven digits are sure.
    liquid, vapour, pressure = NH3()._saturation(temperature)
    return {
        "temperature": temperature,
        "pressure": digits(pressure * 1e3, 7),
        "liquidDensity": digits(liquid, 7),
        "vapourDensity": digits(vapour, 7),
    }


def write(name, content):
    lines = json.dumps(content, indent=2, ensure_ascii=False)
    pathlib.Path(__file__).with_name(name).write_text(lines + "\n", encoding="utf-8")


write(
    "ammonia.json",
    {
        "about": "Ammonia by the equation of 1993, as a general-purpose library has it: K, kg/m3, Pa, J/(kg K), m/s",
        "source": f"Debian package {PACKAGE}",
        "status": "computed",
        "states": [ammonia_state(*state) for state in STATES],
        "saturation": [ammonia_saturation(temperature) for temperature in SATURATED],
    },
)
write(
    "water.json",
    {
        "about": "Pressure of water vapour: IAPWS R7-97 over liquid, R14-08 over ice; K and Pa",
        "source": f"Debian package {PACKAGE}",
        "status": "computed",
        "liquid": [{"temperature": T, "pressure": digits(_PSat_T(T) * 1e6, 11)} for T in WATER],
        "boiling": [{"pressure": p, "temperature": digits(_TSat_P(p / 1e6), 11)} for p in BOILING],
        "ice": [{"temperature": T, "pressure": digits(_Sublimation_Pressure(T) * 1e6, 11)} for T in ICE],
    },
)
