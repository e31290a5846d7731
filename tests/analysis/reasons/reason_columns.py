"""Each number column of a table, whichever sheet it stands on -> the name of the reason of its cells.

The name is filled in from the row's other cells; where a cell may have one of two reasons, both are named, apart by `|`.
`{row}` counts the rows of the table from 1.
"""

from __future__ import annotations

PART_A = {
    # cable-list
    "leads": {
        "route_mm": "{id}.route",
        "slack_mm": "{id}.slack",
        "finished_mm": "{id}.finished",
        "cut_mm": "{id}.cut",
        "next_premade_mm": "{id}.premade",
        "mass_g": "{id}.mass",
    },
    "totals": {
        "leads": "{class}.leads",
        "finished_mm": "{class}.finished",
        "cut_mm": "{class}.cut",
        "next_premade_mm": "{class}.premade",
        "supplied_mm": "{class}.supplied",
        "plugs": "{class}.plugs",
        "mass_g": "{class}.bought-mass",
    },
    "stage-leads": {
        "length_mm": "{id}.length",
    },
    # cut-list
    "cut-list": {
        "cut_mm": "{id}.cut",
    },
    "cut-totals": {
        "pieces": "{stock}.pieces",
        "cut_m": "{stock}.cut",
        "with_waste_m": "{stock}.with-waste",
        "spare_ends_mm": "{stock}.spare-ends",
        "take_m": "{stock}.take",
    },
    "reels": {
        "reels": "{stock}.reels",
        "least": "{stock}.least-reels",
        "left_m": "{stock}.left",
    },
    "heat-shrink": {
        "jacket_mm": "{stock}.jacket",
        "shrunk_mm": "{stock}.shrunk",
        "pieces": "{stock}.shrink-pieces",
        "at_most_m": "{stock}.shrink",
    },
    "made-or-bought": {
        "finished_mm": "{id}.finished",
        "cut_mm": "{id}.cut",
        "premade_mm": "{id}.premade",
        "longer_mm": "{id}.premade-more",
        "bought_mass_g": "{id}.premade-mass",
    },
    "plugs": {
        "to_fit": "{plug}.to-fit",
        "ready": "{plug}.ready",
    },
    # power-table
    "by_outlet": {
        "set_to_V": "{supply}.{outlet}.volts",
        "rating_mA": "{supply}.{outlet}.rating",
        "load_mA": "{supply}.{outlet}.load",
        "load_percent": "{supply}.{outlet}.percent",
    },
    "by_supply": {
        "load_mA": "{supply}.load",
        "load_w_W": "{supply}.watts",
        "load_of_ceiling_percent": "{supply}.share",
        "heat_W": "{supply}.heat",
        "spare_outlets": "{supply}.spare",
    },
    "by_unit": {
        "needs_V": "{unit}.volts",
        "draws_mA": "{unit}.draws",
        "at_switch_on_mA": "{unit}.starts",
        "lead_drop_percent": "{lead}.drop-percent",
    },
    "batteries": {
        "capacity_as_stated_mAh": "{unit}.battery.capacity",
        "draws_mA": "{unit}.battery.draws",
        "life_h": "{unit}.battery.life",
        "shows": "{unit}.battery.shows",
    },
    "shared_returns": {
        "current_mA": "{outlet}.return.current",
        "shared_at_most_mm": "{outlet}.return.length",
        "one_conductor_mohm": "{outlet}.return.mohm",
        "noise_at_most_mV": "{outlet}.return.noise",
    },
    "network": {
        "most_at_its_inlet_V": "{unit}.volts.most",
        "least_V": "{unit}.volts.least",
        "through_its_return_mA": "{unit}.return",
    },
    "lead_drops": {
        "length_mm": "{lead}.wire-length",
        "there_and_back_mohm": "{lead}.mohm",
        "current_mA": "{lead}.current",
        "shared_mV": "{lead}.shared-drop",
        "drop_mV": "{lead}.drop",
        "drop_percent": "{lead}.drop-percent",
        "drop_at_40_degc_mV": "{lead}.warm-drop",
    },
    # mounting-strips
    "strips": {
        "pieces_mm": "{unit}.strips",
        "width_mm": "{unit}.strip-width",
        "centres_mm": "{unit}.centres",
        "on_deck_mm": "{unit}.on-deck",
        "engaged_cm2": "{unit}.engaged",
        "needed_cm2": "{unit}.needed",
    },
    "rail_tape": {
        "x_mm": "board.tape-{rail}.x",
        "tape_mm": "board.tape-{rail}",
    },
    "rolls": {
        "roll_m": "{strip}.roll",
        "rolls": "{strip}.rolls",
        "least": "{strip}.least-rolls",
        "left_m": "{strip}.rolls-left",
    },
    "order": {
        "width_mm": "{strip}.width",
        "on_units_mm": "{strip}.on-units",
        "on_the_deck_mm": "{strip}.on-deck",
        "on_rails_mm": "{strip}.on-rails",
        "sum_mm": "{strip}.sum",
        "order_m": "{strip}.order",
    },
    # wiring-sheet
    "signal": {
        "step": "chain-{chain}.step-{row}",
    },
    "power_leads": {
        "set_to_V": "{lead}.volts",
    },
    "presets": {
        "preset": "preset-{preset}.number",
        "tempo_bpm": "preset-{preset}.tempo",
    },
    "before_first_buffer": {
        "length_m": "{instrument}.section.{lead}.length",
        "per_metre_pF_per_m": "{instrument}.section.{lead}.per-metre",
        "capacitance_pF": "{instrument}.section.{lead}.capacitance",
    },
    "before_first_buffer_sums": {
        "cable_pF": "{instrument}.section.cable",
        "of_the_limit_percent": "{instrument}.section.percent",
        "limit_pF": "{instrument}.section.limit",
        "pickup_pF": "{instrument}.section.pickup",
        "together_pF": "{instrument}.section.together",
        "unloaded_resonance_Hz": "{instrument}.section.resonance",
        "plain_lead_Hz": "{instrument}.section.plain",
    },
}
FURTHER = {
    # loading-table
    "sections": {
        "length_m": "{section_name}.length",
        "cable_pF": "{section_name}.cable",
        "total_pF": "{section_name}.total|{section_name}.cable",
        "load": "{section_name}.load",
        "unloaded_resonance_Hz": "{section_name}.resonance",
        "peak_Hz": "{section_name}.peak",
        "treble_corner_kHz": "{section_name}.corner",
        "loss_dB": "{section_name}.loss",
    },
    "pickups": {
        "inductance_H": "{section_name}.inductance",
        "resistance_kohm": "{section_name}.resistance",
        "pickup_pf_pF": "{section_name}.own",
        "cable_pf_pF": "{section_name}.cable",
        "across_kohm": "{section_name}.across",
        "unloaded_Hz": "{section_name}.resonance",
        "q": "{section_name}.q",
    },
    "responses": {
        "peak_Hz": "{section_name}.peak",
        "peak_level_dB": "{section_name}.peak-level",
        "fallen_Hz": "{section_name}.fallen",
        "at_100hz_dB": "{section_name}.at-100hz",
        "at_1khz_dB": "{section_name}.at-1khz",
        "at_5khz_dB": "{section_name}.at-5khz",
        "plain_100hz_dB": "{section_name}.plain-100hz",
        "plain_1khz_dB": "{section_name}.plain-1khz",
        "plain_5khz_dB": "{section_name}.plain-5khz",
    },
    # level-table
    "levels": {
        "nominal_dBu": "{level_name}.nominal",
        "peak_dBu": "{level_name}.peak",
        "max_in_dBu": "{level_name}.max",
        "margin_dB": "{level_name}.margin",
    },
    "parallel_paths": {
        "apart_ms": "paths-{row}.apart",
        "first_notches_Hz": "paths-{row}.notches",
        "lost_at_lowest_note_dB": "paths-{row}.loss",
    },
    # ground-sheet
    "hum": {
        "area_m2": "ring-{row}.area",
        "frequency_Hz": "ring-{row}.hertz",
        "hum_uv_uV": "ring-{row}.hum",
        "hum_db_dB": "ring-{row}.level",
        "gain_db_dB": "ring-{row}.gain",
    },
    # midi-and-control-map
    "midi_map": {
        "channel": "{unit}.channel",
        "thru_stages": "{unit}.midi.thrus",
        "length_mm": "{unit}.midi.length",
    },
    "midi_leads": {
        "length_mm": "{lead}.supplied|{lead}.length",
    },
    "control_leads": {
        "length_mm": "{lead}.supplied|{lead}.length",
    },
    # preset-sheet
    "programs": {
        "shown": "preset-{preset}.{unit}.shown",
        "as_sent": "preset-{preset}.{unit}.sent",
        "on_the_wire_ms": "preset-{preset}.{unit}.wire|preset-{preset}.wire",
    },
    # mains-sheet
    "supplies": {
        "takes_W": "{supply}.takes",
        "takes_va_VA": "{supply}.takes-va",
        # blank where it does not meet such mains
        "at_100_v_mA": "{supply}.at-100v|",
        "at_120_v_mA": "{supply}.at-120v|",
        "at_230_v_mA": "{supply}.at-230v|",
        "heat_W": "{supply}.heat",
    },
    "places": {
        "all_supplies_VA": "{scenario}.takes-va",
        "all_supplies_a_A": "{scenario}.takes-a",
    },
    "settings": {
        "least_VA": "{scenario}.{supply}.least-va",
        "flux_of_a_winding_V_per_Hz": "{scenario}.{supply}.flux",
        "of_design_percent": "{scenario}.{supply}.flux-percent",
        "secondary_percent_of_design": "{scenario}.{supply}.secondary",
    },
    # label-sheet
    "markers": {
        "around_mm": "{id}.around",
        "quantity": "{id}.markers",
    },
    # mass-and-balance
    "items": {
        "mass_kg": "{mass_name}",
        "x_mm": "{item}.x",
        "y_mm": "{item}.y",
        "z_mm": "{item}.z",
    },
    "loads": {
        "board_kg": "{load_name}.board",
        "empty_kg": "{case}.mass",
        "together_kg": "{load_name}.{load_sum}",
    },
    "balance": {
        "mass_kg": "{deck}.balance.mass",
        "x_mm": "{deck}.balance.x",
        "y_mm": "{deck}.balance.y",
        "z_mm": "{deck}.balance.z",
    },
    "limits": {
        "most_kg": "{limit_name}.most",
        "weighs_kg": "{limit_name}.weighs",
        "left_kg": "{limit_name}.left",
    },
    # crossing-list
    "crossings": {
        "angle_deg": "{lead_1}.{lead_2}.angle",
        "parallel_mm": "{lead_1}.{lead_2}.parallel",
        "distance_mm": "{lead_1}.{lead_2}.distance",
    },
    # pull-list
    "pull-list": {
        "quantity": "pull.{pull_name}.quantity",
        "spare": "pull.{pull_name}.spare",
        "total": "pull.{pull_name}.total",
    },
    # crossing-list, further
    "bundles": {
        "together_mm": "bundle-{row}.together",
    },
    "joint-choice": {
        "saves_mm": "{lead}.joint-saves",
    },
}
