#!/usr/bin/env bash
# build/thawbook-VERSION.tar.xz for a Linux desktop: unpack at /, or anywhere for a look. Same commit, same bytes.
set -euo pipefail
cd "$(dirname "$0")/.."
version=$(sed -n 's/^Version = "\(.*\)"$/\1/p' FyneApp.toml)
made=$(git log -1 --format=%ct 2>/dev/null || echo 0)
root=build/package
share=$root/usr/local/share
archive=build/thawbook-$version.tar.xz

rm -rf "$root"
mkdir -p "$root/usr/local/bin" "$share/applications" "$share/icons/hicolor/scalable/apps" \
  "$share/icons/hicolor/512x512/apps" "$share/doc/thawbook"
go build -ldflags '-s -w' -o "$root/usr/local/bin/thawbook" ./app
cp assets/icon.svg "$share/icons/hicolor/scalable/apps/thawbook.svg"
cp assets/icon.png "$share/icons/hicolor/512x512/apps/thawbook.png"
cp README.md LICENSE "$share/doc/thawbook/"
install -D doc/window.png "$share/doc/thawbook/doc/window.png" # the picture the readme shows
.ci/notice.sh texts >"$share/doc/thawbook/NOTICE"
cat >"$share/applications/thawbook.desktop" <<'END'
[Desktop Entry]
Type=Application
Name=Thawbook
Comment=Judges the bees' winter indoors from loggers' files
Exec=thawbook %f
Icon=thawbook
Terminal=false
Categories=Science;
END
find "$root" -type d -exec chmod 755 {} +
find "$root" -type f -exec chmod 644 {} +
chmod 755 "$root/usr/local/bin/thawbook"
tar --sort=name --mtime="@$made" --owner=0 --group=0 --numeric-owner -C "$root" -cJf "$archive" usr
ls -l "$archive"
