#!/usr/bin/env bash
# Copies the SQLite database while the program runs, checks the copy by opening it, encrypts it when a recipient is set, and thins old copies.
#
#   HOMELINE_DATABASE   the database file
#   HOMELINE_BACKUPS    folder for the copies; keep it on another disk, or copy it to one
#   HOMELINE_RECIPIENT  file with a public OpenPGP key; without it the copies are only as protected as the disk
#   HOMELINE_NOW        for tests: the time as YYYY-MM-DDTHH:MM
#
# Kept (our own default): every copy of the last 2 days, the first of each of 35 days, the first of each of 13 months.
set -euo pipefail
umask 077

database=${HOMELINE_DATABASE:?} backups=${HOMELINE_BACKUPS:?} recipient=${HOMELINE_RECIPIENT:-}
now=${HOMELINE_NOW:-$(date -u +%Y-%m-%dT%H:%M)}
name="agency-${now//:/}"

fail() { printf 'backup: %s\n' "$*" >&2; exit 1; }

[ -f "$database" ] || fail "no database at $database"
mkdir -p "$backups"
work=$(mktemp -d "$backups/.new.XXXXXX")
trap 'rm -rf "$work"' EXIT

# The online backup reads a consistent state and does not block writers for long.
sqlite3 -cmd '.timeout 10000' "$database" ".backup '$work/copy.db'" || fail 'the copy could not be made'
[ "$(sqlite3 "$work/copy.db" 'PRAGMA integrity_check;')" = ok ] || fail 'the copy is damaged'
[ "$(sqlite3 "$work/copy.db" 'SELECT count(*) FROM sqlite_master;')" -gt 0 ] || fail 'the copy is empty'
gzip -6 "$work/copy.db"

if [ -n "$recipient" ]; then
  GNUPGHOME=$work gpg --batch --quiet --yes --trust-model always --recipient-file "$recipient" \
    --output "$work/copy.db.gz.gpg" --encrypt "$work/copy.db.gz" || fail 'the copy could not be encrypted'
  mv "$work/copy.db.gz.gpg" "$backups/$name.db.gz.gpg"
else
  gzip -t "$work/copy.db.gz" || fail 'the copy cannot be read back'
  mv "$work/copy.db.gz" "$backups/$name.db.gz"
fi

# Newest first: a day's or month's first copy is the last one met, so look at the list from its old end.
days_ago() { date -u -d "${now%T*} $1 days ago" +%Y-%m-%d; }
recent=$(days_ago 2) oldest_day=$(days_ago 35) oldest_month=$(date -u -d "${now%-*}-01 13 months ago" +%Y-%m)
last_day='' last_month=''
for file in "$backups"/agency-*.db.gz*; do
  stamp=${file##*/agency-} day=${stamp%%T*}
  month=${day%-*}
  keep=no
  [[ $day < $recent ]] || keep=yes
  [[ $day < $oldest_day || $day == "$last_day" ]] || keep=yes
  [[ $month < $oldest_month || $month == "$last_month" ]] || keep=yes
  last_day=$day last_month=$month
  [ "$keep" = yes ] || rm -- "$file"
done

printf 'backup: %s\n' "$name"
