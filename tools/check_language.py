#!/usr/bin/env python3
"""Fails when something the core or the interface can say to people has no Spanish.

Reads the string literals of core/ and api/ (adjacent ones joined, as the compiler joins them). A
literal with words in it must be
  * a sentence of data/language/es.tsv, places alike; or
  * a piece of one: its words stand in one line there, in their order (sentences are put together); or
  * a label, doc or choice of data/language/labels.es.tsv; or
  * no text for people: listed with its reason in data/language/not_spoken.tsv.
Both catalogues are checked too: one tab, no line twice, the same places on both sides, no label that
no description has. `--labels PROGRAM` asks the program for its English labels and wants each in Spanish.

usage: tools/check_language.py [--labels PROGRAM]
"""
from __future__ import annotations

import argparse
import json
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
DATA = ROOT / "data/language"

TOKEN = re.compile(
    r'//[^\n]*|/\*.*?\*/|R"(\w*)\((?P<raw>.*?)\)\1"|"(?P<plain>(?:[^"\\\n]|\\.)*)"|'
    r"\d[\w']*|'(?:[^'\\]|\\.)+'|^[ \t]*#[^\n]*|\s+|\w+|.", re.DOTALL | re.MULTILINE)
ESCAPES = {"\\n": "\n", "\\t": "\t", '\\"': '"', "\\\\": "\\", "\\r": "\r", "\\b": "\b", "\\f": "\f"}
ASSERTIONS = {"SWATHBOOK_ASSERT", "static_assert"}
PLACE = re.compile(r"\{[^{}]*\}")
WORD = re.compile(r"[A-Za-z]{2,}")


def unescaped(text: str) -> str:
    text = re.sub(r"\\u([0-9a-fA-F]{4})", lambda m: chr(int(m.group(1), 16)), text)
    return re.sub(r"\\[nt\"\\rbf]", lambda m: ESCAPES[m.group(0)], text)


def literals(source: str) -> list[tuple[int, str]]:
    """Every string literal with its line, adjacent ones joined."""
    found: list[tuple[int, str]] = []
    is_open = False
    is_asserting = False  # what an assertion says is for programmers
    for match in TOKEN.finditer(source):
        text = match.group(0)
        value = match.group("raw") if match.group("raw") is not None else match.group("plain")
        if text in ASSERTIONS or text == ";":
            is_asserting = text != ";"
        if value is not None and not is_asserting:
            value = value if match.group("raw") is not None else unescaped(value)
            if is_open:
                found[-1] = (found[-1][0], found[-1][1] + value)
            else:
                found.append((source.count("\n", 0, match.start()) + 1, value))
            is_open = True
        elif not text.isspace() and not text.startswith(("//", "/*")):
            is_open = False
    return found


def template_of(literal: str) -> str:
    """The literal as the catalogue writes it: {:.3g} and {0} are {}; braces of JSON are a place too."""
    doubled = literal.replace("{{", "\0").replace("}}", "\1")
    return PLACE.sub("{}", re.sub("\0[^\1]*\1", "{}", doubled)).strip()


def unit_words() -> set[str]:
    """Words that the matcher takes for units: the same in every language."""
    source = (ROOT / "core/language/figures.cpp").read_text(encoding="utf-8")
    table = source[source.index("auto unit_words"):]
    return set(re.findall(r'"([^"]+)"', table[:table.index(";")]))


UNITS = unit_words()


def is_for_people(literal: str) -> bool:
    """Words with a space between them, or one that begins like a sentence or a label."""
    bare = PLACE.sub(" ", literal).strip()
    words = [word.strip(".") for word in re.findall(r"[A-Za-z.]+", bare)]
    if all(word in UNITS or len(word) < 2 for word in words):
        return False
    if not WORD.search(bare) or re.fullmatch(r"[\w.\-\[\]/:$#,+=]*", bare.lower()) and " " not in bare \
            and not re.fullmatch(r"[A-Z][a-z]+", bare):
        return False
    return True


class Catalogue:
    def __init__(self, name: str) -> None:
        self.name = name
        self.problems: list[str] = []
        self.lines: dict[str, str] = {}
        for number, line in enumerate((DATA / name).read_text(encoding="utf-8").splitlines(), 1):
            if not line or line.startswith("#"):
                continue
            sides = line.split("\t")
            if len(sides) != 2 or not all(sides):
                self.problems.append(f"{name}:{number}: not two sides with one tab between")
                continue
            if sides[0] in self.lines:
                self.problems.append(f"{name}:{number}: \"{sides[0]}\" stands twice")
            self.problems += [f"{name}:{number}: {fault}" for fault in faults_of(*sides)]
            self.lines[sides[0]] = sides[1]


def faults_of(english: str, spanish: str) -> list[str]:
    faults = []
    if english.startswith("@"):
        return faults
    places = re.findall(r"\{[nwl]?\}", english)
    named = {int(number) for number in re.findall(r"\{(\d+)\}", spanish)}
    if named != set(range(len(places))):
        faults.append(f"{len(places)} places in English, {sorted(named)} in Spanish")
    if re.search(r"\{\}\{\}|\{w\}\{", english):
        faults.append("two places without a word between them")
    for sign, opening in (("?", "¿"), ("!", "¡")):
        if sign in spanish and opening not in spanish and "http" not in spanish:
            faults.append(f"{sign} without {opening}")
    if re.search(r"\w\w\w[.?]$", english) and not re.search(r'[.?]["»)]?$', spanish):
        faults.append("the English ends a sentence, the Spanish does not")
    return faults


def pieces_of(template: str) -> list[str]:
    """The words of a piece, as they must stand in one line: what is between places, cut at choices."""
    return [piece.strip() for piece in template.split("{}") if WORD.search(piece)]


def stands_in(pieces: list[str], line: str) -> bool:
    at = 0
    for piece in pieces:
        at = line.find(piece, at)
        if at < 0:
            return False
        at += len(piece)
    return True


def not_spoken() -> dict[str, list[str]]:
    """File or folder -> patterns of literals in it that no person is told."""
    rules: dict[str, list[str]] = {}
    for line in (DATA / "not_spoken.tsv").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            place, pattern, _reason = line.split("\t")
            rules.setdefault(place, []).append(pattern)
    return rules


def is_excused(path: str, literal: str, rules: dict[str, list[str]]) -> bool:
    return any(path.startswith(place) and re.fullmatch(pattern, literal, re.DOTALL)
               for place, patterns in rules.items() for pattern in patterns)


def missing_sentences(sentences: Catalogue, labels: Catalogue) -> list[str]:
    keys = {re.sub(r"\{[nwl]\}", "{}", key).strip() for key in sentences.lines}
    joined = "\n".join(keys)
    rules = not_spoken()
    problems = []
    for top in ("core", "api"):
        for path in sorted((ROOT / top).rglob("*.[ch]pp")):
            name = str(path.relative_to(ROOT))
            if ".gen." in name:
                continue
            for line, literal in literals(path.read_text(encoding="utf-8")):
                template = template_of(literal)
                if not is_for_people(literal) or template in keys or template in labels.lines \
                        or is_excused(name, literal, rules):
                    continue
                pieces = pieces_of(template)
                whole = pieces and stands_in(pieces[:1], joined)
                if whole and any(stands_in(pieces, key) for key in keys):
                    continue
                problems.append(f"{name}:{line}: no Spanish for \"{literal}\"")
    return problems


def missing_notes(sentences: Catalogue) -> list[str]:
    """The notes of the rule tables are told beside a record's fields."""
    problems = []
    for name, column in (("requirements", "note"), ("authorities", "note"), ("authorities", "ended_by")):
        lines = (ROOT / f"data/rules/{name}.tsv").read_text(encoding="utf-8").splitlines()
        place = lines[0].split("\t").index(column)
        for text in {line.split("\t")[place] for line in lines[1:]}:
            words = [word for word in re.findall(r"[A-Za-z]+", text) if word not in UNITS]
            if words and text not in sentences.lines \
                    and not re.fullmatch(r"\d+ (days|years)", text):
                problems.append(f"data/rules/{name}.tsv: no Spanish for \"{text}\"")
    return sorted(problems)


def missing_labels(program: str, labels: Catalogue) -> list[str]:
    made = subprocess.run([program, "operations", "--labels", "en"], check=True, capture_output=True)
    english = json.loads(made.stdout)
    wanted: dict[str, str] = {}
    for name, operation in english["operations"].items():
        wanted.setdefault(operation["summary"], name)
    for group in ("structs", "choices"):
        for owner, members in english[group].items():
            for member, texts in members.items():
                if f"@{owner}.{member}" not in labels.lines:
                    wanted.setdefault(texts["label"], f"{owner}.{member}")
                if texts["doc"]:
                    wanted.setdefault(texts["doc"], f"{owner}.{member}")
    problems = [f"labels.es.tsv: no Spanish for \"{text}\" ({where})" for text, where in wanted.items()
                if text not in labels.lines]
    owners = {f"@{owner}.{member}" for group in ("structs", "choices")
              for owner, members in english[group].items() for member in members}
    problems += [f"labels.es.tsv: \"{key}\" is no field" for key in labels.lines
                 if key.startswith("@") and key not in owners]
    return problems


def main() -> int:
    reader = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    reader.add_argument("--labels", metavar="PROGRAM", help="check the labels this program has")
    asked = reader.parse_args()
    sentences = Catalogue("es.tsv")
    labels = Catalogue("labels.es.tsv")
    problems = sentences.problems + labels.problems
    if asked.labels:
        problems += missing_labels(asked.labels, labels)
    else:
        problems += missing_sentences(sentences, labels) + missing_notes(sentences)
    for problem in problems:
        print(problem, file=sys.stderr)
    print(f"language: {len(sentences.lines)} sentences, {len(labels.lines)} labels, "
          f"{len(problems)} problems")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
