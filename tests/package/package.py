#!/usr/bin/python3
"""The packages: made, looked through by lintian, installed on this machine, run and removed.   package.py BUILD_DIR

BUILD_DIR is configured with CROPFUL_ALONE. Installing takes root, as CI is; others look at what is in the package."""
import os
import pathlib
import re
import subprocess
import sys
import tarfile
import tempfile

NEEDED = {"linux-vdso.so.1", "libc.so.6", "libm.so.6", "libstdc++.so.6", "libgcc_s.so.1", "ld-linux-x86-64.so.2"}
FILES = ["bin/cropful", "share/man/man1/cropful.1", "share/bash-completion/completions/cropful",
         "share/zsh/site-functions/_cropful", "share/fish/vendor_completions.d/cropful.fish",
         "share/cropful/rations/birds/bobwhite.toml", "share/doc/cropful/guide.md"]


def said(*words, **more):
    ran = subprocess.run(words, capture_output=True, text=True, **more)
    assert ran.returncode == 0, f"{words} ended with {ran.returncode}: {ran.stdout}{ran.stderr}"
    return ran.stdout


def plan(program, rations):
    page = said(program, "plan", str(rations / "farms" / "backyard.toml"), "--now", "2026-11-25")
    assert page.startswith("Backyard") and "BUY" in page, page[:200]


def archive(file):
    with tempfile.TemporaryDirectory() as folder:
        with tarfile.open(file) as packed:
            packed.extractall(folder)
        (top,) = pathlib.Path(folder).iterdir()
        missing = [name for name in FILES if not (top / name).exists()]
        assert not missing, f"{file} lacks {missing}"
        program = str(top / "bin" / "cropful")
        libraries = {pathlib.Path(line.split()[0]).name for line in said("ldd", program).splitlines()}
        assert libraries <= NEEDED, f"it needs {libraries - NEEDED}"
        plan(program, top / "share" / "cropful" / "rations")
        blend = said(program, "blend", str(top / "share/cropful/rations/farms/mixing.toml"))
        assert "optimum" not in blend and len(blend) > 500, blend  # Clp is in it
    print(f"{file.name}: runs where it is unpacked, with {len(libraries)} libraries of the system")


def debian(file):
    found = subprocess.run(["lintian", "--allow-root", "--fail-on", "error", str(file)], capture_output=True, text=True)
    assert found.returncode == 0, found.stdout + found.stderr
    listed = said("dpkg-deb", "-c", str(file))
    missing = [name for name in FILES if f"./usr/{name}" not in listed]
    assert not missing, f"{file} lacks {missing}"
    assert "include/" not in listed and ".a\n" not in listed, "what other projects build with has a component of its own"
    if os.geteuid() != 0:
        return print(f"{file.name}: fit for Debian; not installed, which takes root")
    assert subprocess.run(["dpkg-query", "-W", "cropful"], capture_output=True).returncode != 0, "it is installed already"
    said("dpkg", "-i", str(file))
    try:
        version = re.search(r"Version: (\S+)", said("dpkg", "-s", "cropful")).group(1)
        assert said("/usr/bin/cropful", "--version").split()[-1] == version
        plan("/usr/bin/cropful", pathlib.Path("/usr/share/cropful/rations"))
    finally:
        said("dpkg", "--purge", "cropful")
    left = [name for name in FILES if pathlib.Path("/usr", name).exists()]
    assert not left, f"left behind: {left}"
    print(f"{file.name}: installed, run and removed")


def main():
    built = pathlib.Path(sys.argv[1])
    for old in [*built.glob("*.deb"), *built.glob("*.tar.xz")]:
        old.unlink()
    said("cmake", "--build", str(built), "--target", "package")
    (one,), (other,) = built.glob("*.deb"), built.glob("*.tar.xz")
    debian(one)
    archive(other)


if __name__ == "__main__":
    main()
