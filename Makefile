# make [all|test|fault|browser-test|html-test|template|template-test|reference|demo|asan|
#       coverage|mutation|fuzz|fuzz-campaign|bench|valgrind|lint|format|install|uninstall|deb|package-test|clean]
# make Q= shows every command.
PREFIX ?= /usr/local
LIBDIR ?= lib
BUILD  ?= build
CFLAGS ?= -O3 -g
WARN    = -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wstrict-prototypes -Wmissing-prototypes
FORTIFY = $(if $(filter -O -O1 -O2 -O3 -Os -Og,$(CFLAGS)),-U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2)
HARDEN := $(FORTIFY) -fstack-protector-strong -fPIE
RELRO   = -pie -Wl,-z,relro,-z,now
override CPPFLAGS += -Iinclude -Isrc
override CFLAGS   += -std=c17 $(WARN) $(HARDEN)
override LDFLAGS  += $(RELRO)
LDLIBS  = -lcsv -lmd -lm
Q       = @

ROOMS  = measure notes level drain report record
LIB   := $(wildcard $(ROOMS:%=src/%/*.c))
CLI   := $(wildcard src/cli/*.c)
TESTS := $(patsubst %.c,$(BUILD)/%,$(wildcard tests/*/test_*.c))
FUZZ  := $(patsubst tests/fuzz/%.c,%,$(wildcard tests/fuzz/fuzz_*.c))
AGAIN := $(FUZZ:fuzz_%=$(BUILD)/tests/fuzz/again_%)
FILES := $(wildcard include/rodbook/*.h src/*/*.[ch] tests/*/*.[ch])
obj    = $(patsubst %.c,$(BUILD)/%.o,$(1))

all: $(BUILD)/rodbook $(BUILD)/librodbook.a

$(BUILD)/librodbook.a: $(call obj,$(LIB))
	@rm -f $@
	$(Q)$(AR) rcs $@ $^
$(BUILD)/rodbook: $(call obj,$(CLI)) $(BUILD)/librodbook.a
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LDLIBS)
$(TESTS): LDLIBS += -lcmocka
$(filter $(BUILD)/tests/published/%,$(TESTS)): $(BUILD)/tests/published/run_book.o
$(BUILD)/tests/cli/%: $(BUILD)/tests/cli/%.o $(filter-out %/main.o,$(call obj,$(CLI))) $(BUILD)/librodbook.a
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LDLIBS)
# The program inside a test that lets its calls fail.
FAULTS = main malloc calloc realloc free strdup strndup getline open __open_2 read write fsync close \
	rename fstat stat mkstemp fchmod unlink flock readlink access \
	rb_arena_take rb_arena_take_clear rb_arena_text
$(filter $(BUILD)/tests/fault/%,$(TESTS)): $(BUILD)/tests/fault/test_%: $(BUILD)/tests/fault/test_%.o \
		$(call obj,$(filter-out tests/fault/test_%,$(wildcard tests/fault/*.c)) $(CLI)) $(BUILD)/librodbook.a
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) $(FAULTS:%=-Wl,--wrap=%) -o $@ $^ $(LDLIBS)
# The program inside a host that has asked for the user's locale.
$(BUILD)/tests/locale/host: $(BUILD)/tests/locale/host.o $(call obj,$(CLI)) $(BUILD)/librodbook.a
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LDLIBS)
# A target of the fuzzer: by itself (make fuzz), and on files that are given (make test).
FUZZER = $(wildcard $(shell clang -print-resource-dir)/lib/linux/libclang_rt.fuzzer-$(shell uname -m).a)
FUZZ_HELP := $(call obj,$(filter-out %/again.c %/keep.c tests/fuzz/mutate% $(FUZZ:%=tests/fuzz/%.c),$(wildcard tests/fuzz/*.c)))
$(FUZZ:%=$(BUILD)/tests/fuzz/%): $(FUZZ_HELP)
$(patsubst %,$(BUILD)/tests/fuzz/fuzz_%,book written form fall hand drain peg rules record): \
	$(BUILD)/tests/fuzz/mutate.o
$(patsubst %,$(BUILD)/tests/fuzz/fuzz_%,reading slope tolerance expression convert): \
	$(BUILD)/tests/fuzz/mutate_measure.o
$(AGAIN): $(BUILD)/tests/fuzz/again_%: $(BUILD)/tests/fuzz/fuzz_%.o $(BUILD)/tests/fuzz/again.o $(FUZZ_HELP) $(BUILD)/librodbook.a
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $^ $(LDLIBS)
# The test programs, and the program itself, keep what they hand to a reader: seeds.
KEEP := $(patsubst %.c,$(BUILD)/keep/%,$(filter-out tests/cli/% tests/fault/% tests/report/test_message_list.c,$(wildcard tests/*/test_*.c)))
comma = ,
WRAP = $(patsubst %,-Wl$(comma)--wrap=rb_%,book_read plan_read two_peg_read rules_read \
	jurisdiction_read ledger_read reading_parse chainage_parse expression_parse slope_parse \
	tolerance_parse)
$(filter $(BUILD)/keep/tests/published/%,$(KEEP)): $(BUILD)/tests/published/run_book.o
$(BUILD)/keep/rodbook: $(call obj,$(CLI)) $(BUILD)/tests/fuzz/keep.o $(BUILD)/librodbook.a
	@mkdir -p $(@D)
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) $(WRAP) -o $@ $^ $(LDLIBS)
$(BUILD)/keep/tests/%: $(BUILD)/tests/%.o $(BUILD)/tests/fuzz/keep.o $(BUILD)/librodbook.a
	@mkdir -p $(@D)
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) $(WRAP) -o $@ $(filter %.o,$^) $(filter %.a,$^) $(LDLIBS) -lcmocka
$(BUILD)/tests/%: $(BUILD)/tests/%.o $(BUILD)/librodbook.a
	$(Q)$(CC) $(CFLAGS) $(LDFLAGS) -o $@ $(filter %.o,$^) $(filter %.a,$^) $(LDLIBS)
# The library is plain C17; only what stands around it may ask the system for more.
$(BUILD)/src/cli/%.o $(BUILD)/tests/cli/%.o $(BUILD)/tests/bench/%.o: CPPFLAGS += -D_POSIX_C_SOURCE=200809L
$(BUILD)/tests/fault/%.o: CPPFLAGS += -D_DEFAULT_SOURCE
$(BUILD)/%.o: %.c
	@mkdir -p $(@D)
	@echo "  CC $<"
	$(Q)$(CC) $(CPPFLAGS) $(CFLAGS) -MMD -MP -c -o $@ $<

test-programs: all $(TESTS) $(AGAIN) $(BUILD)/tests/locale/host
# The unit tests and what runs the program itself; where one fails, the others still run.
SCRIPTS = cases documents manual template hostile kill fuzz locale hardened installed units
test: test-programs
	@$(MAKE) --no-print-directory -k --output-sync=target \
		$(TESTS:%=%.run) $(patsubst %,run-%,$(filter-out $(SKIP),$(SCRIPTS)))
$(TESTS:%=%.run): %.run: %
	@$<
$(SCRIPTS:%=run-%): test-programs
run-cases:     ; @tests/cases/run $(BUILD)/rodbook
run-documents: ; @tests/documents $(BUILD)/rodbook
run-fuzz:      ; @tests/fuzz/again $(BUILD)
run-hardened:  ; @HARDEN="$(HARDEN)" tests/hardened $(BUILD)/rodbook
run-hostile:   ; @tests/hostile $(BUILD)/rodbook
run-installed: ; @CC="$(CC)" CFLAGS="$(CFLAGS)" tests/installed $(BUILD)
run-kill:      ; @tests/kill/run $(BUILD)/rodbook
run-locale:    ; @tests/locale/run $(BUILD)
run-manual:    ; @tests/manual $(BUILD)/rodbook
run-template:  ; @tests/template/rows $(BUILD)/rodbook
run-units:     ; @tests/reference/units.sh $(BUILD)/rodbook
# Every call for memory and to the system fails, where the tests take a share of them.
fault: $(filter $(BUILD)/tests/fault/%,$(TESTS))
	@for t in $^; do RODBOOK_FAULTS=all $$t || exit 1; done
# The reports in a headless browser, on a phone, a screen and paper; needs chromium.
browser-test: all
	tests/browser/run $(BUILD)/rodbook $(FOLDER)
# The same reports before a checker of HTML; needs npm.
html-test: all
	tests/browser/html $(BUILD)/rodbook $(BUILD)/npm
# The package goes in and comes out without a trace; needs dpkg, asks lintian.
package-test:
	tests/package $(BUILD)
# The forms as a spreadsheet of text cells: rows from the program, files by LibreOffice.
template: all
	ACCEPT=yes tests/template/rows $(BUILD)/rodbook
	for kind in ods xlsx; do \
		tests/template/office --convert-to $$kind --outdir samples samples/template.fods || exit 1; done
# What a spreadsheet does to our files, and we to its; needs LibreOffice.
template-test: all
	tests/template/run $(BUILD)/rodbook
# Independent reductions and drain plans in exact fractions, over random ones; needs python3.
reference: all
	python3 tests/reference/compare.py --program $(BUILD)/rodbook --count $(or $(COUNT),500) --seed $(or $(SEED),1)
# docs/messages.md is made from the words themselves.
messages: $(BUILD)/tests/report/test_message_list
	ACCEPT=yes $< >/dev/null
demo: all
	@tests/demo $(BUILD)/rodbook
# The page of the manual and the moment of a kill are no matter of memory.  gcc's own
# sanitizer starts sooner from within the program.
asan:
	@RODBOOK_FAULTS=few $(MAKE) --no-print-directory BUILD=$(BUILD)/asan HARDEN= RELRO= SKIP="manual kill" \
		LDFLAGS="$(if $(findstring clang,$(CC)),,-static-libasan -static-libubsan)" \
		CFLAGS="-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer" test
coverage:
	rm -rf $(BUILD)/coverage
	@failed=0; RODBOOK_FAULTS=100 GCOV_ERROR_FILE=/dev/null $(MAKE) \
		--no-print-directory BUILD=$(BUILD)/coverage HARDEN= RELRO= \
		CFLAGS="-O0 -g --coverage -DRB_COVERAGE" test || failed=1; \
	tests/coverage $(BUILD)/coverage && exit $$failed
# Change the sources one operator at a time and see whether a test notices; needs python3.
mutation:
	@tests/mutation --build $(BUILD) --count $(or $(COUNT),40) --seed $(or $(SEED),1) \
		$(if $(filter command,$(origin FILES)),$(FILES))
seed-programs: $(KEEP) $(BUILD)/keep/rodbook
# Each target for so many seconds, with sanitizers; needs clang's fuzzer.
fuzz:
	@tests/fuzz/has-fuzzer || exit 0; \
	$(MAKE) --no-print-directory seed-programs && \
	$(MAKE) --no-print-directory BUILD=$(BUILD)/fuzz CC=clang HARDEN= RELRO= \
		CFLAGS="-O1 -g -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all" \
		$(FUZZ:%=$(BUILD)/fuzz/tests/fuzz/%) LDLIBS="$(LDLIBS) -fsanitize=fuzzer" && \
	tests/fuzz/run $(BUILD) $(or $(SECONDS),30) $(FUZZ:fuzz_%=%)
# Each target until it finds no more; without sanitizers and traced comparisons, for speed,
# and so with the fuzzer's library that does not look into strcmp.
fuzz-campaign: seed-programs
	@tests/fuzz/has-fuzzer || exit 0; \
	$(MAKE) --no-print-directory BUILD=$(BUILD)/fast CC=clang HARDEN= RELRO= \
		CFLAGS="-O2 -g -fsanitize-coverage=inline-8bit-counters,pc-table" \
		LDLIBS="$(LDLIBS) $(FUZZER) -lstdc++ -lpthread" \
		$(FUZZ:%=$(BUILD)/fast/tests/fuzz/%) && \
	tests/fuzz/campaign $(BUILD) $(or $(TARGETS),$(FUZZ:fuzz_%=%))
bench: all $(BUILD)/tests/bench/scan $(BUILD)/tests/bench/cost
	@tests/bench/run $(BUILD)
# Variables stand at the head of their function; cppcheck takes the lesser of two for 0; a
# `continue` alone is a body that was meant to be empty.
CPPCHECK = cppcheck -q --std=c17 --error-exitcode=1 --inline-suppr -Iinclude -Isrc \
	--enable=warning,portability,performance
JOBS     = $(if $(findstring j,$(filter-out --%,$(MAKEFLAGS))),,-j$(shell nproc))
# What every command does to memory, over the samples; needs valgrind.
valgrind: all
	tests/valgrind $(BUILD)/rodbook
# An analyser that found nothing leaves a mark, so that only what was changed is read again.
$(BUILD)/%.analysed: %.c $(BUILD)/%.o .clang-tidy tests/analyse
	@echo "  ANALYSE $<"
	@tests/analyse $<
	@touch $@
analyse: $(patsubst %.c,$(BUILD)/%.analysed,$(LIB) $(CLI))
lint:
	tests/layers
	tests/scripts
	@if command -v mandoc >/dev/null; then mandoc -T lint -W style docs/rodbook.1; else \
		echo "lint: mandoc is not installed, docs/rodbook.1 is not looked at"; fi
	@clang-format --dry-run --Werror $(FILES)
	$(CPPCHECK),style --suppress=variableScope --suppress=knownConditionTrueFalse \
		--suppress=redundantContinue src
	$(CPPCHECK) tests
	@$(MAKE) --no-print-directory -k $(JOBS) analyse
format:
	clang-format -i $(FILES)

VERSION = $(shell sed -n 's/^.define RB_VERSION "\(.*\)"/\1/p' include/rodbook/version.h)
DOCUMENTS = README.md docs/LICENSE docs/formats.md docs/messages.md docs/methods.md docs/example.c
to      = $(DESTDIR)$(PREFIX)
install: all
	install -d $(addprefix $(to)/,bin $(LIBDIR)/pkgconfig include/rodbook share/man/man1 \
		share/bash-completion/completions share/doc/rodbook/samples/rules)
	install -m 755 $(BUILD)/rodbook $(to)/bin
	install -m 644 $(BUILD)/librodbook.a $(to)/$(LIBDIR)
	install -m 644 include/rodbook/* $(to)/include/rodbook
	sed 's|@PREFIX@|$(PREFIX)|; s|@LIBDIR@|$(LIBDIR)|; s|@VERSION@|$(VERSION)|' docs/install/rodbook.pc.in \
		>$(to)/$(LIBDIR)/pkgconfig/rodbook.pc
	chmod 644 $(to)/$(LIBDIR)/pkgconfig/rodbook.pc
	install -m 644 docs/rodbook.1 $(to)/share/man/man1
	install -m 644 docs/install/rodbook.bash $(to)/share/bash-completion/completions/rodbook
	install -m 644 $(DOCUMENTS) $(to)/share/doc/rodbook
	install -m 644 $(wildcard samples/*.*) $(to)/share/doc/rodbook/samples
	install -m 644 $(wildcard samples/rules/*) $(to)/share/doc/rodbook/samples/rules
uninstall:
	rm -f $(addprefix $(to)/,bin/rodbook $(LIBDIR)/librodbook.a $(LIBDIR)/pkgconfig/rodbook.pc \
		share/man/man1/rodbook.1 share/bash-completion/completions/rodbook)
	rm -rf $(addprefix $(to)/,include/rodbook share/doc/rodbook)
# A Debian package of all this, in the build folder; needs dpkg-deb.
deb: all
	@docs/install/deb $(BUILD)
clean:
	rm -rf $(BUILD)

-include $(shell find $(BUILD) -name '*.d' 2>/dev/null)
.PHONY: all test-programs test fault browser-test html-test template template-test reference messages demo asan \
	coverage mutation seed-programs fuzz fuzz-campaign bench valgrind analyse lint format \
	install uninstall deb package-test clean
.SECONDARY:
