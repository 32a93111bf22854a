# The menu. Needed beforehand: Go and a C compiler. `make run` and `make test` fetch the rest themselves.

# One set of build flags for every command: another set would compile OpenGL's bindings anew (two minutes).
export GOFLAGS := -mod=readonly -tags=migrated_fynedo -trimpath -buildvcs=auto
export FUZZTIME ?= 10s
unexport LC_ALL LANGUAGE

# Checks run on a fixed clock and in a fixed language, the window in the keeper's own.
test lint fuzz bench soak golden: export TZ := UTC
test lint fuzz bench soak golden: export LANG := en_GB.UTF-8

step := @.ci/step.sh

.PHONY: menu run build test cli lint fuzz bench soak mutants demo golden package
.DEFAULT_GOAL := menu

menu:
	@echo 'make run      build the program and open its window; make run ARGS=PLAN.toml opens a plan'
	@echo 'make build    build the program alone: build/thawbook, window and doors'
	@echo 'make test     everything that must hold, under 15 minutes'
	@echo 'make cli      the doors without a window: build/thawbook-cli, static'
	@echo 'make lint     gofmt, vet, staticcheck, import arrows, documents'
	@echo 'make fuzz     every fuzz target for FUZZTIME (10s)'
	@echo 'make bench    the benchmarks, what the window costs, and the peers where their scripts lie beside the project'
	@echo 'make soak     winter files killed, starved and damaged, fuzzing for hours, fifty starts of the window'
	@echo 'make mutants  comparisons of package analysis flipped one at a time: each must make a test fail'
	@echo 'make demo     the demo winters: build/demo'
	@echo 'make golden   draw the golden pictures again; look at each before it is committed'
	@echo 'make package  build/thawbook-VERSION.tar.xz for a Linux desktop'

run: build
	@build/thawbook $(ARGS)

build:
	$(step) packages .ci/packages.sh run
	$(step) build go build -o build/thawbook ./app

test:
	$(step) test .ci/test.sh

cli:
	$(step) cli .ci/cli.sh build

lint:
	$(step) packages .ci/packages.sh run
	$(step) lint .ci/lint.sh core window

fuzz:
	$(step) fuzz .ci/fuzz.sh

bench: build
	$(step) packages .ci/packages.sh test
	$(step) bench .ci/bench.sh

soak: export FUZZTIME := 10m
soak: build
	$(step) packages .ci/packages.sh test
	$(step) soak .ci/soak.sh
	$(step) fuzz .ci/fuzz.sh
	$(step) window .ci/window.sh 50

mutants:
	$(step) mutants go run .ci/mutants.go

demo:
	$(step) demo go run ./sampledata/make -out build/demo

golden:
	$(step) golden .ci/golden.sh

package:
	$(step) packages .ci/packages.sh run
	$(step) package .ci/package.sh
