#!/usr/bin/env bash
# Tests backup.sh with a made-up clock: copies, restores, thins, and refuses what it cannot vouch for.
set -euo pipefail
script="$(dirname "${BASH_SOURCE[0]}")/backup.sh"
room=$(mktemp -d)
trap 'rm -rf "$room"' EXIT
export HOMELINE_DATABASE=$room/agency.db HOMELINE_BACKUPS=$room/backups

expect() { [ "$2" = "$3" ] || { printf 'FAILED: %s: expected %s, found %s\n' "$1" "$2" "$3"; exit 1; }; printf 'passed: %s\n' "$1"; }
copies() { find "$HOMELINE_BACKUPS" -name 'agency-*' | wc -l; }

sqlite3 "$HOMELINE_DATABASE" 'PRAGMA journal_mode=WAL; CREATE TABLE line_event(id); INSERT INTO line_event VALUES (1),(2),(3);' >/dev/null

HOMELINE_NOW=2027-03-08T06:00 "$script" >/dev/null
gunzip -c "$HOMELINE_BACKUPS/agency-2027-03-08T0600.db.gz" >"$room/restored.db"
expect 'a copy can be restored and holds every row' 3 "$(sqlite3 "$room/restored.db" 'SELECT count(*) FROM line_event')"
expect 'only the owner can read it' 600 "$(stat -c %a "$HOMELINE_BACKUPS/agency-2027-03-08T0600.db.gz")"

HOMELINE_NOW=2027-03-08T06:15 "$script" >/dev/null
expect 'copies of today are all kept' 2 "$(copies)"
HOMELINE_NOW=2027-03-12T06:00 "$script" >/dev/null
expect 'after some days only the first of a day is left' 2 "$(copies)"
HOMELINE_NOW=2027-05-01T06:00 "$script" >/dev/null
expect 'after 35 days only the first of a month is left' 2 "$(copies)"
HOMELINE_NOW=2028-05-01T06:00 "$script" >/dev/null
expect 'after 13 months the month goes too' 2 "$(copies)"

printf 'not a database' >"$room/broken.db"
if HOMELINE_DATABASE=$room/broken.db HOMELINE_NOW=2028-05-02T06:00 "$script" 2>/dev/null; then answer=accepted; else answer=refused; fi
expect 'a damaged database is refused' refused "$answer"
expect 'and leaves no copy behind' 2 "$(copies)"
expect 'and no half-made folder' 0 "$(find "$HOMELINE_BACKUPS" -name '.new.*' | wc -l)"
