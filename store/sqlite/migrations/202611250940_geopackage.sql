-- The same file is an OGC GeoPackage 1.3: stands, setbacks, passes and coverage open in any GIS. Rows here are
-- derived from the entries and written anew from them; triggers of the 1.3 kind keep the spatial indexes.
PRAGMA application_id = 1196444487;
PRAGMA user_version = 10300;

CREATE TABLE gpkg_spatial_ref_sys (
    srs_name TEXT NOT NULL,
    srs_id INTEGER NOT NULL PRIMARY KEY,
    organization TEXT NOT NULL,
    organization_coordsys_id INTEGER NOT NULL,
    definition TEXT NOT NULL,
    description TEXT
);
INSERT INTO gpkg_spatial_ref_sys VALUES
    ('Undefined Cartesian SRS', -1, 'NONE', -1, 'undefined', 'undefined Cartesian coordinate reference system'),
    ('Undefined geographic SRS', 0, 'NONE', 0, 'undefined', 'undefined geographic coordinate reference system'),
    ('WGS 84 geodetic', 4326, 'EPSG', 4326,
     'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AXIS["Latitude",NORTH],AXIS["Longitude",EAST],AUTHORITY["EPSG","4326"]]',
     'longitude/latitude coordinates in decimal degrees on the WGS 84 spheroid');

CREATE TABLE gpkg_contents (
    table_name TEXT NOT NULL PRIMARY KEY,
    data_type TEXT NOT NULL,
    identifier TEXT UNIQUE,
    description TEXT DEFAULT '',
    last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
    min_x DOUBLE,
    min_y DOUBLE,
    max_x DOUBLE,
    max_y DOUBLE,
    srs_id INTEGER,
    CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id)
);

CREATE TABLE gpkg_geometry_columns (
    table_name TEXT NOT NULL,
    column_name TEXT NOT NULL,
    geometry_type_name TEXT NOT NULL,
    srs_id INTEGER NOT NULL,
    z TINYINT NOT NULL,
    m TINYINT NOT NULL,
    CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
    CONSTRAINT uk_gc_table_name UNIQUE (table_name),
    CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
    CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id)
);

CREATE TABLE gpkg_extensions (
    table_name TEXT,
    column_name TEXT,
    extension_name TEXT NOT NULL,
    definition TEXT NOT NULL,
    scope TEXT NOT NULL,
    CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name)
);

CREATE TABLE stands (
    fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    geom MULTIPOLYGON,
    thing TEXT NOT NULL UNIQUE,
    name TEXT,
    author TEXT,
    changed DATETIME,
    details TEXT
);
INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id)
VALUES ('stands', 'features', 'Stands', 'Units of ground treated alike', 4326);
INSERT INTO gpkg_geometry_columns VALUES ('stands', 'geom', 'MULTIPOLYGON', 4326, 0, 0);
INSERT INTO gpkg_extensions
VALUES ('stands', 'geom', 'gpkg_rtree_index', 'http://www.geopackage.org/spec121/#extension_rtree', 'write-only');
CREATE VIRTUAL TABLE rtree_stands_geom USING rtree(id, minx, maxx, miny, maxy);
CREATE TRIGGER rtree_stands_geom_insert AFTER INSERT ON stands WHEN (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_stands_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_stands_geom_update1 AFTER UPDATE OF geom ON stands WHEN OLD.fid = NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_stands_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_stands_geom_update2 AFTER UPDATE OF geom ON stands WHEN OLD.fid = NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_stands_geom WHERE id = OLD.fid;
END;
CREATE TRIGGER rtree_stands_geom_update3 AFTER UPDATE ON stands WHEN OLD.fid != NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_stands_geom WHERE id = OLD.fid;
    INSERT OR REPLACE INTO rtree_stands_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_stands_geom_update4 AFTER UPDATE ON stands WHEN OLD.fid != NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_stands_geom WHERE id IN (OLD.fid, NEW.fid);
END;
CREATE TRIGGER rtree_stands_geom_delete AFTER DELETE ON stands WHEN OLD.geom NOT NULL
BEGIN
    DELETE FROM rtree_stands_geom WHERE id = OLD.fid;
END;

CREATE TABLE setbacks (
    fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    geom GEOMETRY,
    thing TEXT NOT NULL UNIQUE,
    name TEXT,
    author TEXT,
    changed DATETIME,
    details TEXT
);
INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id)
VALUES ('setbacks', 'features', 'Setbacks', 'What the spray must keep away from', 4326);
INSERT INTO gpkg_geometry_columns VALUES ('setbacks', 'geom', 'GEOMETRY', 4326, 0, 0);
INSERT INTO gpkg_extensions
VALUES ('setbacks', 'geom', 'gpkg_rtree_index', 'http://www.geopackage.org/spec121/#extension_rtree', 'write-only');
CREATE VIRTUAL TABLE rtree_setbacks_geom USING rtree(id, minx, maxx, miny, maxy);
CREATE TRIGGER rtree_setbacks_geom_insert AFTER INSERT ON setbacks WHEN (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_setbacks_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_setbacks_geom_update1 AFTER UPDATE OF geom ON setbacks WHEN OLD.fid = NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_setbacks_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_setbacks_geom_update2 AFTER UPDATE OF geom ON setbacks WHEN OLD.fid = NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_setbacks_geom WHERE id = OLD.fid;
END;
CREATE TRIGGER rtree_setbacks_geom_update3 AFTER UPDATE ON setbacks WHEN OLD.fid != NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_setbacks_geom WHERE id = OLD.fid;
    INSERT OR REPLACE INTO rtree_setbacks_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_setbacks_geom_update4 AFTER UPDATE ON setbacks WHEN OLD.fid != NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_setbacks_geom WHERE id IN (OLD.fid, NEW.fid);
END;
CREATE TRIGGER rtree_setbacks_geom_delete AFTER DELETE ON setbacks WHEN OLD.geom NOT NULL
BEGIN
    DELETE FROM rtree_setbacks_geom WHERE id = OLD.fid;
END;

CREATE TABLE passes (
    fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    geom MULTILINESTRING,
    thing TEXT NOT NULL UNIQUE,
    name TEXT,
    author TEXT,
    changed DATETIME,
    details TEXT
);
INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id)
VALUES ('passes', 'features', 'Passes', 'Runs of a sprayer over ground', 4326);
INSERT INTO gpkg_geometry_columns VALUES ('passes', 'geom', 'MULTILINESTRING', 4326, 0, 0);
INSERT INTO gpkg_extensions
VALUES ('passes', 'geom', 'gpkg_rtree_index', 'http://www.geopackage.org/spec121/#extension_rtree', 'write-only');
CREATE VIRTUAL TABLE rtree_passes_geom USING rtree(id, minx, maxx, miny, maxy);
CREATE TRIGGER rtree_passes_geom_insert AFTER INSERT ON passes WHEN (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_passes_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_passes_geom_update1 AFTER UPDATE OF geom ON passes WHEN OLD.fid = NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_passes_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_passes_geom_update2 AFTER UPDATE OF geom ON passes WHEN OLD.fid = NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_passes_geom WHERE id = OLD.fid;
END;
CREATE TRIGGER rtree_passes_geom_update3 AFTER UPDATE ON passes WHEN OLD.fid != NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_passes_geom WHERE id = OLD.fid;
    INSERT OR REPLACE INTO rtree_passes_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_passes_geom_update4 AFTER UPDATE ON passes WHEN OLD.fid != NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_passes_geom WHERE id IN (OLD.fid, NEW.fid);
END;
CREATE TRIGGER rtree_passes_geom_delete AFTER DELETE ON passes WHEN OLD.geom NOT NULL
BEGIN
    DELETE FROM rtree_passes_geom WHERE id = OLD.fid;
END;

CREATE TABLE coverage (
    fid INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    geom MULTIPOLYGON,
    thing TEXT NOT NULL UNIQUE,
    name TEXT,
    author TEXT,
    changed DATETIME,
    details TEXT
);
INSERT INTO gpkg_contents (table_name, data_type, identifier, description, srs_id)
VALUES ('coverage', 'features', 'Coverage', 'Ground that passes have wetted', 4326);
INSERT INTO gpkg_geometry_columns VALUES ('coverage', 'geom', 'MULTIPOLYGON', 4326, 0, 0);
INSERT INTO gpkg_extensions
VALUES ('coverage', 'geom', 'gpkg_rtree_index', 'http://www.geopackage.org/spec121/#extension_rtree', 'write-only');
CREATE VIRTUAL TABLE rtree_coverage_geom USING rtree(id, minx, maxx, miny, maxy);
CREATE TRIGGER rtree_coverage_geom_insert AFTER INSERT ON coverage WHEN (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_coverage_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_coverage_geom_update1 AFTER UPDATE OF geom ON coverage WHEN OLD.fid = NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    INSERT OR REPLACE INTO rtree_coverage_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_coverage_geom_update2 AFTER UPDATE OF geom ON coverage WHEN OLD.fid = NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_coverage_geom WHERE id = OLD.fid;
END;
CREATE TRIGGER rtree_coverage_geom_update3 AFTER UPDATE ON coverage WHEN OLD.fid != NEW.fid AND (NEW.geom NOTNULL AND NOT ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_coverage_geom WHERE id = OLD.fid;
    INSERT OR REPLACE INTO rtree_coverage_geom VALUES (NEW.fid, ST_MinX(NEW.geom), ST_MaxX(NEW.geom), ST_MinY(NEW.geom), ST_MaxY(NEW.geom));
END;
CREATE TRIGGER rtree_coverage_geom_update4 AFTER UPDATE ON coverage WHEN OLD.fid != NEW.fid AND (NEW.geom ISNULL OR ST_IsEmpty(NEW.geom))
BEGIN
    DELETE FROM rtree_coverage_geom WHERE id IN (OLD.fid, NEW.fid);
END;
CREATE TRIGGER rtree_coverage_geom_delete AFTER DELETE ON coverage WHEN OLD.geom NOT NULL
BEGIN
    DELETE FROM rtree_coverage_geom WHERE id = OLD.fid;
END;
