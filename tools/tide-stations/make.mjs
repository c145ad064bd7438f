// Writes the stations the program ships; see README.md beside this file.
import { stations } from "@neaps/tide-database";
import { mkdirSync, writeFileSync } from "node:fs";
import { gzipSync } from "node:zlib";

const SOURCES = { noaa: "N", ticon: "T", kartverket: "K" };
const TERMS = { N: "public domain", T: "cc-by-4.0", K: "cc-by-4.0" };
const LEAST_METRES = 0.001;
// Phases of these count hours of the local clock as if they were Greenwich's: against the nearest NOAA gauges all four of
// M2, S2, K1 and O1 come 5 hours early in southern Florida, 8 hours in California. Two of the Californian ones agree.
const localClock = (id) => id.endsWith("-usa-sfwmd") || (id.endsWith("-usa-cm") && !/^ticon\/(morro_bay|los_osos)_/.test(id));
const target = new URL("../../app/src/main/resources/ebblight/app/tide/stations.tsv.gz", import.meta.url);

const decimals = (value, places) => String(Number(value.toFixed(places)));
const letters = (text) => text.normalize("NFD").replace(/\p{M}+/gu, "").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");
const words = (text) => text.split(/[^\p{L}\p{N}]+/u).map(letters).filter((word) => word.length > 2);

// Place and constants of a TICON station go by its id. Some names do not: seven British ones stand at each other's
// stations, and gauges with a number are called after the next town of a map, whose terms are not ours. Where name and id
// share no word, or the name is that of another id, the id is the name.
const placeIn = (id) => (id.startsWith("ticon/") ? id.slice("ticon/".length).split("-")[0] : "");
const places = new Set(stations.map((station) => letters(placeIn(station.id))));
const named = (station) => {
  const own = placeIn(station.id);
  const another = letters(own) !== letters(station.name) && places.has(letters(station.name)) && !letters(own).includes(letters(station.name));
  if (!own || (!another && words(station.name).some((word) => letters(own).includes(word)) || letters(own).includes(letters(station.name)))) {
    return station.name;
  }
  return own.split("_").map((word) => (/\d/.test(word) || word.length < 2 ? word.toUpperCase() : word[0].toUpperCase() + word.slice(1))).join(" ");
};
const clean = (text) => text.replace(/[\t\r\n;]+/g, " ").trim();

const lines = [];
const left = {};
for (const station of stations) {
  if (station.kind !== "tide" || station.type !== "reference") continue;
  const source = SOURCES[station.id.split("/")[0]];
  const constants = (station.harmonic_constituents ?? []).filter((c) => c.amplitude >= LEAST_METRES);
  const why = !station.license.commercial_use
    ? "non-commercial terms"
    : !source || TERMS[source] !== station.license.type
      ? "other source or terms"
      : constants.length === 0
        ? "no constants"
        : localClock(station.id)
          ? "phases by the local clock"
          : null;
  if (why) {
    left[why] = (left[why] ?? 0) + 1;
    continue;
  }
  const datums = station.datums ?? {};
  const above = datums.MSL != null && datums[station.chart_datum] != null ? datums.MSL - datums[station.chart_datum] : null;
  lines.push(
    [
      station.id,
      clean(named(station)),
      station.country_code ?? "",
      decimals(station.latitude, 4),
      decimals(station.longitude, 4),
      source,
      above == null ? "MSL" : station.chart_datum,
      above == null ? "" : decimals(above, 3),
      constants.map((c) => `${c.name} ${decimals(c.amplitude, 3)} ${decimals(c.phase, 1)}`).join(";"),
    ].join("\t"),
  );
}
lines.sort();
const packed = gzipSync(lines.join("\n") + "\n", { level: 9 });
packed.fill(0, 4, 8); // no time inside: the same data give the same bytes
mkdirSync(new URL(".", target), { recursive: true });
writeFileSync(target, packed);
console.log(`${lines.length} stations, ${packed.length} bytes; left out:`, left);
