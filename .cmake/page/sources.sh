#!/bin/sh
# Fetches third-party sources of the phone page and unpacks them: sh sources.sh FOLDER
# Made there: Clp, CoinUtils and sqlite3. Debian's source packages come by apt-get with folders of its own, from the machine's
# own entries read as sources, so that nothing of the system changes and any user may do it; SQLite's amalgamation comes in an
# npm package. Another file than that of the SHA-256 here is refused.
set -eu
folder=$1
rm -rf "$folder"
mkdir -p "$folder/apt/lists/partial" "$folder/apt/cache/archives/partial" "$folder/apt/entries" "$folder/Clp" \
    "$folder/CoinUtils" "$folder/sqlite3"
cd "$folder"

for entry in /etc/apt/sources.list.d/*.sources; do
    if [ -f "$entry" ]; then sed 's/^Types:.*/Types: deb-src/' "$entry" >"apt/entries/$(basename "$entry")"; fi
done
for entry in /etc/apt/sources.list /etc/apt/sources.list.d/*.list; do
    if [ -f "$entry" ]; then sed -n 's/^deb /deb-src /p' "$entry" >"apt/entries/$(basename "$entry" .list).list"; fi
done
apt() {
    apt-get -qq -o "Dir::Etc::SourceList=/dev/null" -o "Dir::Etc::SourceParts=$PWD/apt/entries" \
        -o "Dir::State::Lists=$PWD/apt/lists" -o "Dir::Cache=$PWD/apt/cache" -o "APT::Sandbox::User=" "$@"
}
apt update
apt source --download-only --tar-only clp=1.17.6-3 coinutils=2.11.4+repack1-2
npm pack --silent better-sqlite3@11.7.0 >/dev/null

sha256sum --check --quiet <<'END'
2c7d8737c408a362ccea2ffed024dab46ba4903d31e69465959cb3fc4977340b  clp_1.17.6.orig.tar.gz
a9d2bdcb22a00a571c397ce55c3107730729f7d07fb3e60f1058668c5884c074  coinutils_2.11.4+repack1.orig.tar.xz
0790df6bdd02fb93b7dec9d6fbe114aa50a25bd5b4e44e5c3b223933f7cd2e1e  better-sqlite3-11.7.0.tgz
END
tar -xf clp_1.17.6.orig.tar.gz -C Clp --strip-components=1
tar -xf coinutils_2.11.4+repack1.orig.tar.xz -C CoinUtils --strip-components=1
tar -xf better-sqlite3-11.7.0.tgz -C sqlite3 --strip-components=3 package/deps/sqlite3
rm -rf apt ./*.tar.* ./*.tgz
