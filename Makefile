# make help lists what can be asked for. Every target works a second time, and then installs nothing.

.DEFAULT_GOAL := help
MAKEFLAGS += --no-print-directory
.NOTPARALLEL:
JOBS ?= $(shell nproc)
FUZZ_SECONDS ?= 60

web_ready := $(wildcard web/src/main.ts)
web_sources := $(shell find web/src web/public web/index.html web/*.ts web/*.js web/*.json -type f 2>/dev/null)
web_installed := web/node_modules/.installed
web_built := web/dist/index.html

cxx_files = $(shell git ls-files --cached --others --exclude-standard 'src/*.h' 'src/*.cpp' 'tests/*.h' 'tests/*.cpp' 'perf/*.h' 'perf/*.cpp')

.PHONY: help demo build test fast asan fuzz perf format tidy web packages packages-style packages-fuzz clean

help: ## list the targets
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "make %-8s %s\n", $$1, $$2 }' Makefile

demo: packages web build/release/build.ninja ## build the program and open an invented shop in it
	@echo "demo: building build/release/tailblock"
	@cmake --build build/release -j $(JOBS) --target tailblock
	@build/release/tailblock demo

build: packages web build/release/build.ninja ## build everything: the program is build/release/tailblock
	@echo "build: everything, in build/release"
	@cmake --build build/release -j $(JOBS) --target all benchmarks

test: packages web build/release/build.ninja ## build the program and its tests and run every check, the browser tests too
	@echo "test: building in build/release, and meanwhile installing what the checks alone need"
	@scripts/install-debian test & installing=$$!; \
	  cmake --build build/release -j $(JOBS); built=$$?; wait $$installing && exit $$built
	@cmake --preset release --log-level=WARNING  # finds what was installed since
	@cmake --build build/release -j $(JOBS)
	@echo "test: every check"
	@ctest --preset release -j $(JOBS)

fast: packages build/release/build.ninja ## build, and run the unit tests of what changed
	@echo "fast: unit tests of what changed"
	@cmake --build build/release -j $(JOBS) --target tailblock fast

asan: packages build/asan/build.ninja ## build with the sanitizers and run the unit tests under them
	@echo "asan: unit tests under the address and undefined-behaviour sanitizers"
	@cmake --build build/asan -j $(JOBS)
	@ctest --preset asan -j $(JOBS)

fuzz: packages-fuzz build/fuzz/build.ninja ## let libFuzzer search every parser for FUZZ_SECONDS each (default 60)
	@echo "fuzz: $(FUZZ_SECONDS) s a target"
	@cmake --build build/fuzz -j $(JOBS)
	@for target in build/fuzz/fuzz/*_fuzz; do echo "fuzz: $$target"; \
	  mkdir -p $$target.found && $$target -max_total_time=$(FUZZ_SECONDS) -artifact_prefix=$$target. $$target.found || exit 1; done

perf: build ## measure against the limits the design sets; one benchmark after another
	@for benchmark in build/release/perf/*_perf; do echo "perf: $$benchmark"; $$benchmark || exit 1; done

format: packages-style $(if $(web_ready),$(web_installed)) ## lay out every source file as .clang-format says
	@echo "format: C++ by clang-format, web/ by biome"
	@clang-format -i $(cxx_files)
	@$(if $(web_ready),cd web && npm run --silent format,true)

tidy: packages packages-style build/tidy/build.ninja ## run clang-tidy on every source file; any remark is an error
	@echo "tidy: clang-tidy on every source file"
	@cmake --build build/tidy -j $(JOBS)

web: packages $(if $(web_ready),$(web_built)) ## build the pages into web/dist
	@$(if $(web_ready),true,echo "web: there are no pages yet")

packages: ## install the Debian packages that building needs, if any is missing
	@scripts/install-debian build

packages-fuzz:
	@scripts/install-debian build fuzz

packages-style:
	@scripts/install-debian style

clean: ## remove everything that was built
	rm -rf build web/dist

build/%/build.ninja: CMakePresets.json | packages
	@echo "configuring build/$*"
	@cmake --preset $* --log-level=WARNING
	@touch $@

$(web_installed): web/package.json web/package-lock.json web/.npmrc | packages
	@echo "web: installing what package-lock.json names"
	@cd web && npm ci
	@touch $@

$(web_built): $(web_installed) $(web_sources) | packages
	@echo "web: building the pages"
	@cd web && npm run --silent build
	@touch $@
