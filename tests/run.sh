#!/usr/bin/env bash
# Sets up a fresh machine, builds HomeLine, checks its formatting and runs every test project.
# Works from any folder. The last line is always "N passed, N failed, N skipped"; the exit code is 1 when anything failed.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.." || exit 1

# The same run on every machine: no telemetry, English messages, no compiler nodes left behind to hold the output open.
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_UI_LANGUAGE=en LC_ALL=C.UTF-8 MSBUILDDISABLENODEREUSE=1
# A missing snapshot is a failure, and the browser is the system's own.
export SNAPSHOOTER_STRICT_MODE=on PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1

readonly solution=HomeLine.sln configuration=Release results="$PWD/artifacts/test-results"
# The browser walks keep what they saw; it is no part of the repository.
export SCREENSHOTS="${SCREENSHOTS:-$results/screenshots}"
passed=0 failed=0 skipped=0

# The runner's own time-out asks tests to stop. One that never looks must not hold up the rest: it is killed, and the step fails.
killed_after=()
command -v timeout >/dev/null && killed_after=(timeout --kill-after=30 24m)

say() { printf '\n== %s\n' "$*"; }

# A step that is not a test (set-up, build, formatting) counts as one failure when it fails.
step_failed() { failed=$((failed + 1)); printf 'FAILED: %s\n' "$*"; }

finish() {
  printf '\n%d passed, %d failed, %d skipped\n' "$passed" "$failed" "$skipped"
  [ "$failed" -eq 0 ]
  exit
}

# --- What the tests need beside the SDK ------------------------------------------------------------------------------

missing_packages() {
  command -v chromium >/dev/null || echo chromium
  ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || echo postgresql
  command -v pdftoppm >/dev/null || echo poppler-utils
  command -v sqlite3 >/dev/null || echo sqlite3
  ls /usr/share/fonts/truetype/noto/NotoSans-Regular.* >/dev/null 2>&1 || echo fonts-noto-core
}

set_up_machine() {
  local missing
  missing=$(missing_packages | tr '\n' ' ')
  [ -n "$missing" ] || return 0
  if [ "$(id -u)" -eq 0 ] && command -v apt-get >/dev/null; then
    printf 'Installing %s\n' "$missing"
    # shellcheck disable=SC2086 # the list is meant to fall apart into words
    { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing; } \
      >/dev/null || printf 'apt-get could not install everything.\n'
    missing=$(missing_packages | tr '\n' ' ')
  fi
  [ -z "$missing" ] && return 0
  printf 'Not on this machine: %s\n' "$missing"
  case $missing in *chromium*) printf '  without chromium the browser tests are skipped\n' ;; esac
  case $missing in *postgresql*) printf '  without postgresql the tests on PostgreSQL are skipped; SQLite is tested\n' ;; esac
  case $missing in *poppler*) printf '  without poppler-utils the tests that look at rendered pages are skipped\n' ;; esac
  case $missing in *sqlite3*) printf '  without sqlite3 the test of the backups is skipped\n' ;; esac
  case $missing in *fonts*) printf '  without fonts-noto-core pages in the browser may show other letters\n' ;; esac
}

# --- Tests -----------------------------------------------------------------------------------------------------------

# A count from the head of a report in the xUnit XML format, 0 when it is not there: count FILE ATTRIBUTE
count() {
  local number
  number=$(grep -o -m1 '<assembly [^>]*>' "$1" | grep -o " $2=\"[0-9]*\"" | head -n1 | tr -dc 0-9)
  printf '%d' "${number:-0}"
}

run_project() {
  local name report code failures
  name=$(basename "$1" .csproj)
  report="$results/$name.xml"
  say "$name"
  ${killed_after[@]+"${killed_after[@]}"} dotnet test --project "$1" --configuration "$configuration" --no-build --no-progress --timeout 22m --long-running 120 \
    --results-directory "$results" --report-xunit-xml --report-xunit-xml-filename "$name.xml"
  code=$?
  if ! grep -qs '<assembly ' "$report"; then
    step_failed "$name ended without a report (exit code $code)"
    return
  fi
  failures=$(($(count "$report" failed) + $(count "$report" errors)))
  passed=$((passed + $(count "$report" passed)))
  skipped=$((skipped + $(count "$report" skipped)))
  failed=$((failed + failures))
  # 8 is "no test ran"; every other code without a failed test is a crash, an abort or a time-out.
  [ "$code" -eq 0 ] || [ "$failures" -gt 0 ] || step_failed "$name (exit code $code; 8 means that no test ran)"
}

# The backup script has a test of its own: a line "passed: ..." for each expectation, and a stop at the first that fails.
run_backup_test() {
  local output code=0
  say 'Backups'
  if ! command -v sqlite3 >/dev/null; then
    skipped=$((skipped + 1))
    printf 'skipped deploy/backup-test.sh\n  sqlite3 is not on this machine\n'
    return
  fi
  output=$(bash deploy/backup-test.sh 2>&1) || code=$?
  printf '%s\n' "$output"
  passed=$((passed + $(grep -c '^passed: ' <<<"$output")))
  [ "$code" -eq 0 ] || step_failed "deploy/backup-test.sh (exit code $code)"
}

# --- The run ---------------------------------------------------------------------------------------------------------

say 'Set-up'
set_up_machine
command -v dotnet >/dev/null || { step_failed 'the .NET 10 SDK is not installed'; finish; }

say 'Restore'
dotnet restore "$solution" --locked-mode -v quiet || { step_failed 'restore in locked mode'; finish; }

say 'Build (warnings are errors)'
dotnet build "$solution" --configuration "$configuration" --no-restore -v quiet || { step_failed 'build'; finish; }

say 'Formatting'
dotnet format "$solution" --verify-no-changes --no-restore || step_failed 'formatting; "dotnet format" mends it'

rm -rf "$results"
for project in tests/*/*.csproj; do
  # Measurements take hours and prove nothing by passing; docs/benchmarks.md has their commands.
  case $project in */HomeLine.Benchmarks.csproj) continue ;; esac
  run_project "$project"
done
run_backup_test
finish
