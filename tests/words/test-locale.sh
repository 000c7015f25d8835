#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# The decimal sign follows the locale for its reader and never for the plain one.
localedef=$1 program=$2 folder=$3
echo 1..3
mkdir -p "$folder"
if [ ! -f "$folder/de_DE.UTF-8/LC_NUMERIC" ] && ! "$localedef" -i de_DE -f UTF-8 "$folder/de_DE.UTF-8" 2>/dev/null; then
  for n in 1 2 3; do echo "ok $n # SKIP no sources for the locale de_DE"; done
  exit 0
fi
n=0
check () {
  n=$((n + 1))
  if [ "$2" = "$3" ]; then echo "ok $n $1"; else echo "not ok $n $1"; echo "# expected $3"; echo "# got      $2"; fi
}
nb=$(printf '\302\240')
check "a decimal comma in de_DE, none for the plain reader" \
  "$(LOCPATH=$folder LC_ALL=de_DE.UTF-8 "$program")" "16,4${nb}g|16.4${nb}g|1,125|1"
check "a decimal point in C.UTF-8" "$(LC_ALL=C.UTF-8 "$program")" "16.4${nb}g|16.4${nb}g|1.125|1"
check "a decimal point in C" "$(LC_ALL=C "$program")" "16.4${nb}g|16.4${nb}g|1.125|1"
