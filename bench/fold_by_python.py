#!/usr/bin/env python3
"""The rival of fold_bench: the same fold of the same notebook file, with Python's sqlite3, json and
dictionaries. Prints the processor seconds of reading and folding, then the BLAKE2b-256 of the state text."""
import hashlib
import json
import sqlite3
import sys
import time
import uuid

KINDS = ["sprayer", "tip_set", "operator", "calibration", "landowner", "stand", "setback", "product_card", "job",
         "load", "pass", "reading", "record", "amendment", "attachment"]


def fold(path):
    state, records = {}, {}
    rows = sqlite3.connect(path).execute(
        "SELECT id, device, made_ms, made_counter, kind, subject, body FROM entries ORDER BY sequence")
    for identity, device, made_ms, made_counter, kind, subject, text in rows:
        stamp = (made_ms, made_counter, device, identity)
        body = json.loads(text)
        if kind == "record":
            records.setdefault(subject, []).append((stamp, body))
            continue
        fields = state.setdefault((kind, subject), {})
        for name, value in body.items():
            kept = fields.get(name)
            if kept is None or stamp > kept[0]:
                fields[name] = (stamp, value)
    conflicts = []
    for subject, entries in records.items():
        state[("record", subject)] = settle(subject, entries, conflicts)
    return state, conflicts


def last_writers(entries):
    fields = {}
    for stamp, body in entries:
        for name, value in body.items():
            fields[name] = (stamp, value)
    return fields


def settle(subject, entries, conflicts):
    entries.sort(key=lambda entry: entry[0])
    closer = next((i for i, entry in enumerate(entries) if entry[1].get("closed") is True), None)
    if closer is None:
        return last_writers(entries)
    closing_stamp, content = entries[closer]
    for name, (stamp, value) in last_writers(entries[:closer]).items():
        if stamp[2] != closing_stamp[2] and content.get(name) != value:
            conflicts.append((3, subject, stamp[3], name))
    for stamp, body in entries[closer + 1:]:
        conflicts.append((2 if body.get("closed") is True else 1, subject, stamp[3], ""))
    return {name: (closing_stamp, value) for name, value in content.items()}


def state_text(state, conflicts):
    words = {1: "edit_after_close", 2: "closed_twice", 3: "draft_not_in_record"}
    lines = []
    for kind, subject in sorted(state, key=lambda thing: (KINDS.index(thing[0]), thing[1])):
        thing = f"{kind} {uuid.UUID(bytes=subject)}"
        for name, (_, value) in sorted(state[(kind, subject)].items(), key=lambda item: item[0]):
            if value is not None:
                text = json.dumps(value, separators=(",", ":"), ensure_ascii=False)
                lines.append(f"{thing} {name} {text}\n")
    for number, subject, entry, name in sorted(conflicts):
        lines.append(f"conflict {words[number]} {uuid.UUID(bytes=subject)} {uuid.UUID(bytes=entry)} {name}\n")
    return "".join(lines)


start = time.process_time()
folded = fold(sys.argv[1])
seconds = time.process_time() - start
digest = hashlib.blake2b(state_text(*folded).encode(), digest_size=32).hexdigest()
print(seconds, digest)
