package ebblight.app.kit;

import java.util.List;

/** The step that adds what is remembered across outings; every list below another goes when that one goes. */
final class MemoryStep {

    static final List<String> TABLES = List.of(
            """
            CREATE TABLE calibrations (id INTEGER PRIMARY KEY, filter TEXT NOT NULL, measuredOn TEXT NOT NULL,
              takes TEXT, stops REAL NOT NULL, low REAL, high REAL, red REAL, blue REAL, pairs INTEGER,
              UNIQUE (filter, measuredOn)) STRICT""",
            """
            CREATE TABLE outings (id INTEGER PRIMARY KEY, folder TEXT NOT NULL UNIQUE, name TEXT, zone TEXT,
              latitude REAL, longitude REAL) STRICT""",
            """
            CREATE TABLE measurements (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES outings (id) ON DELETE CASCADE,
              input TEXT NOT NULL, filmedAt TEXT, mode TEXT, frames INTEGER, seconds REAL, framesPerSecond REAL,
              windMetresPerSecond REAL, mapWidth INTEGER, mapHeight INTEGER, map TEXT, sketch TEXT,
              UNIQUE (parent, input)) STRICT""",
            """
            CREATE TABLE parts (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES measurements (id) ON DELETE CASCADE,
              part TEXT NOT NULL, number INTEGER NOT NULL, kind TEXT NOT NULL, water TEXT, areaFraction REAL,
              texture REAL, standing REAL, correlationSeconds REAL, wavePeriodSeconds REAL, confidence REAL,
              resolved INTEGER, UNIQUE (parent, part)) STRICT""",
            """
            CREATE TABLE predictions (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES parts (id) ON DELETE CASCADE,
              seconds REAL NOT NULL, "left" REAL NOT NULL, low REAL, high REAL, UNIQUE (parent, seconds)) STRICT""",
            """
            CREATE TABLE frames (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES outings (id) ON DELETE CASCADE,
              file TEXT NOT NULL, camera TEXT, taken TEXT, exposureSeconds REAL, fNumber REAL, iso REAL,
              focalMillimetres REAL, role TEXT, "rank" INTEGER, fixedSharpness REAL, smoothness REAL,
              clippedFraction REAL, rating INTEGER, suggestedRating INTEGER, UNIQUE (parent, file)) STRICT""",
            """
            CREATE TABLE entries (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES outings (id) ON DELETE CASCADE,
              openedAt TEXT NOT NULL, "view" TEXT, file TEXT, openSeconds REAL, plannedSeconds REAL, offStops REAL,
              exposureValue100 REAL, verdict TEXT, UNIQUE (parent, openedAt)) STRICT""",
            """
            CREATE TABLE results (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES outings (id) ON DELETE CASCADE,
              file TEXT NOT NULL, command TEXT, seconds REAL, frames INTEGER, UNIQUE (parent, file)) STRICT""",
            """
            CREATE TABLE outcomes (id INTEGER PRIMARY KEY,
              parent INTEGER NOT NULL REFERENCES results (id) ON DELETE CASCADE,
              part TEXT NOT NULL, kind TEXT NOT NULL, water TEXT, windMetresPerSecond REAL, predictedFrom TEXT,
              predicted REAL NOT NULL, low REAL, high REAL, cameOut REAL NOT NULL, resolved INTEGER,
              UNIQUE (parent, part)) STRICT""");

    private MemoryStep() {}
}
