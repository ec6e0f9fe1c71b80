#!/usr/bin/env bash
# A PostgreSQL server of the tests' own, under target/: `start` prints its address, `stop` takes it away.
set -euo pipefail
cd "$(dirname "$0")/../.."
place="$PWD/target/postgres"
programs="$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -V | tail -1)"
[ -n "$programs" ] || programs="$(dirname "$(command -v initdb)")"
# A port of this tree's own, so that two trees can be tested side by side.
port=$((20000 + $(printf %s "$PWD" | cksum | cut -d' ' -f1) % 10000))
# The server does not run as root.
as_server() { if [ "$(id -u)" -eq 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi; }

stop() {
  if [ -f "$place/data/postmaster.pid" ]; then as_server "$programs/pg_ctl" -D "$place/data" -m immediate -w stop >/dev/null 2>&1 || true; fi
  rm -rf "$place"
}

case "${1:-}" in
start)
  stop
  # A folder that the server's user may reach, wherever this tree stands.
  home="$(mktemp -d /tmp/wellproved-postgres.XXXXXX)"
  mkdir -p "$(dirname "$place")"
  ln -s "$home" "$place"
  [ "$(id -u)" -ne 0 ] || chown postgres "$home"
  as_server "$programs/initdb" -D "$place/data" -U baker -A trust --encoding=UTF8 --locale=C >/dev/null
  as_server "$programs/pg_ctl" -D "$place/data" -l "$place/log" -w \
    -o "-c listen_addresses=127.0.0.1 -p $port -k $place -c max_connections=200" start >/dev/null
  echo "postgres://baker@127.0.0.1:$port/postgres"
  ;;
stop)
  home="$(readlink "$place" || true)"
  stop
  [ -z "$home" ] || rm -rf "$home"
  ;;
*)
  echo "say start or stop" >&2
  exit 2
  ;;
esac
