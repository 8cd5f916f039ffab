# Everything here needs Python 3.11 or newer and make; `make` alone lists the targets.
PYTHON ?= python3
PORT ?= 8000
PYTEST_ARGS ?=
QA_ARGS ?=
LOCK_ARGS ?=
MUTANTS_ARGS ?= --count 200
TRIALS ?=

venv := .venv
bin := $(venv)/bin
requirements := service/requirements
pip_install := $(bin)/python -m pip install --quiet --disable-pip-version-check --no-input
compile := $(bin)/uv pip compile --quiet --no-config --universal --python-version 3.11 --fork-strategy fewest \
	--generate-hashes --no-emit-index-url --no-header $(LOCK_ARGS)
# Neighbours stay in one process, which makes what they share once; who is done first takes over from the others.
spread := -n auto --dist worksteal

# Kept, whatever the caller's environment says: the tests start a hundred processes, which would each compile it all.
unexport PYTHONDONTWRITEBYTECODE

.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.PHONY: help run demo test test-long clients mutants rooms lint types format contract handbook contract-release sdk pictures validate backtest loopstudy bench chaos load qa lock audit images sbom clean

help: ## List the targets
	@awk 'BEGIN {FS = ":.*## "} /^[a-z-]+:.*## / {printf "  make %-17s %s\n", $$1, $$2}' $(MAKEFILE_LIST)

run: $(venv)/.compiled ## Start the service on loopback with SQLite, and print a development key
	$(bin)/steelyard serve --development --port $(PORT)

demo: $(venv)/.sdk ## An invented member end to end through the SDK, then stop
	$(bin)/python sdk/examples/demo.py

test: lint types ## Everything that gates a landing
	$(bin)/python -m pytest $(spread) -m "not long" $(PYTEST_ARGS)

test-long: $(venv)/.dev ## The long sweeps
	$(bin)/python -m pytest $(spread) -m long $(PYTEST_ARGS)

clients: $(venv)/.dev ## Generate clients by other generators, compile them strictly, have them answered; lint the contract
	TEST_SERVICES_REQUIRED=1 $(bin)/python -m pytest tests/clients $(PYTEST_ARGS)

rooms: $(venv)/.dev ## Draw the rooms of the package and the arrows between them
	$(bin)/python -m tests.rooms

mutants: $(venv)/.dev ## Make 200 small faults in the science and the answers, and count what the tests notice; hours
	$(bin)/python -m tests.mutants $(MUTANTS_ARGS)

lint: $(venv)/.dev ## Style, and the import rules between the layers
	$(bin)/ruff check .
	$(bin)/ruff format --check .
	$(bin)/lint-imports

types: $(venv)/.dev ## Static types
	$(bin)/mypy
	PYRIGHT_PYTHON_IGNORE_WARNINGS=1 $(bin)/pyright

format: $(venv)/.dev ## Rewrite the code in the project's style
	$(bin)/ruff check --fix-only .
	$(bin)/ruff format .

contract: $(venv)/.dev ## Write the OpenAPI document, the list of problems and that of bulk columns from the code
	$(bin)/steelyard contract
	$(bin)/steelyard bulk columns > contracts/bulk-columns.md

handbook: $(venv)/.run ## Write the page of settings from the code
	$(bin)/steelyard settings > docker/settings.md

contract-release: contract ## Freeze the contract as released; from then on it may only grow
	$(bin)/python contracts/tools/contract_release.py

sdk: contract ## Generate the SDK's client from the contract
	$(bin)/python sdk/regenerate.py
	$(bin)/python sdk/examples/portal/build.py

pictures: $(venv)/.dev ## Draw the README's picture again
	$(bin)/python sdk/examples/pictures.py

validate: $(venv)/.dev ## Rewrite the validation page; TRIALS=path prints it of other trials (tests/validation/trials.md)
	$(bin)/python -m tests.validation.validate $(TRIALS)

backtest: $(venv)/.dev ## Rewrite the page on how often the intervals hold
	$(bin)/python -m tests.backtest
	$(bin)/python -m tests.logstudy

loopstudy: $(venv)/.dev ## Rewrite the page on members advised by reviews, by the plan alone and by a coach's rule
	$(bin)/python -m tests.loopstudy

bench: $(venv)/.dev ## Measure speed, as ratios within one run
	$(bin)/python -m tests.bench

chaos: $(venv)/.dev ## Break the service's surroundings in turn, and write what was seen
	PYTHONPATH=tests $(bin)/python -m tests.chaos

load: $(venv)/.dev ## A hundred thousand requests, and ten thousand connections at once
	PYTHONPATH=tests $(bin)/python -m tests.chaos.load

qa: $(venv)/.dev ## Check a deployed service: make qa URL=http://127.0.0.1:8000 KEY=...; writes var/qa.xml
	@STEELYARD_URL="$(URL)" STEELYARD_KEY="$(KEY)" $(bin)/steelyard-qa --junit var/qa.xml $(QA_ARGS)

lock: $(venv)/.dev ## Pin what pyproject.toml and the .in files ask for; LOCK_ARGS=--upgrade takes newer ones
	$(compile) pyproject.toml -o $(requirements)/run.txt
	$(compile) $(requirements)/build.in -c $(requirements)/run.txt -o $(requirements)/build.txt
	$(compile) pyproject.toml sdk/pyproject.toml $(requirements)/build.in $(requirements)/dev.in \
		-c $(requirements)/run.txt -c $(requirements)/build.txt -o $(requirements)/dev.txt
	$(compile) pyproject.toml --extra tracing -c $(requirements)/run.txt -c $(requirements)/dev.txt -o $(requirements)/image.txt
	$(compile) pyproject.toml --extra tracing --extra bulk -c $(requirements)/image.txt -c $(requirements)/dev.txt -o $(requirements)/bulk.txt
	$(compile) sdk/pyproject.toml -c $(requirements)/run.txt -c $(requirements)/dev.txt -o $(requirements)/sdk.txt
	$(compile) $(requirements)/foreign.in -o $(requirements)/foreign.txt
	cd tests/clients && npm install --package-lock-only && ../../$(bin)/python ../npm_lock.py package-lock.json

audit: $(venv)/.dev ## Look the pinned versions up among known holes; needs a network
	$(bin)/pip-audit --disable-pip --require-hashes -r $(requirements)/run.txt

images: ## Ask the container engine for the digests of the images that are not ours; writes docker/images.env
	@$(PYTHON) docker/tools/image_digests.py > docker/images.env.new && mv docker/images.env.new docker/images.env; \
		status=$$?; rm -f docker/images.env.new; exit $$status

sbom: $(venv)/.dev ## Write the bill of materials of the image's packages (CycloneDX): var/steelyard.cdx.json
	@mkdir -p var
	$(bin)/python docker/tools/bill_of_materials.py $(requirements)/image.txt > var/steelyard.cdx.json

clean: ## Remove the environment, caches and local data
	rm -rf $(venv) .pytest_cache .mypy_cache .ruff_cache .hypothesis .import_linter_cache .schemathesis build dist var

$(venv)/.made:
	@command -v $(PYTHON) >/dev/null || { \
		echo "No '$(PYTHON)' found. Install Python 3.11 or newer, or name one: make PYTHON=python3.12 ..."; exit 1; }
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { \
		echo "'$(PYTHON)' is $$($(PYTHON) --version 2>&1); 3.11 or newer is needed."; \
		echo "Name another: make PYTHON=python3.12 ..."; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || { \
		echo "'$(PYTHON)' cannot create environments (no venv or ensurepip)."; \
		echo "On Debian and Ubuntu: apt-get install python3-venv"; exit 1; }
	$(PYTHON) -m venv $(venv)
	@touch $@

$(venv)/.run: $(venv)/.made $(requirements)/run.txt $(requirements)/build.txt pyproject.toml
	@echo "Installing what the service runs on ..."
	$(pip_install) --require-hashes -r $(requirements)/run.txt -r $(requirements)/build.txt
	$(pip_install) --no-deps --no-build-isolation -e .
	@touch $@ $(venv)/.compiled

# Without a C compiler the core runs as it is written.
$(venv)/.compiled: $(venv)/.run $(wildcard service/steelyard/science/*/*.py service/compile_core/*.py service/compile_core/*.pyx)
	$(bin)/python service/compile_core/compile_floats.py
	@touch $@

# The SDK beside the service: what the demo needs.
$(venv)/.sdk: $(venv)/.run $(requirements)/sdk.txt sdk/pyproject.toml | $(venv)/.compiled
	@echo "Installing the SDK ..."
	$(pip_install) --require-hashes -r $(requirements)/run.txt -r $(requirements)/sdk.txt
	$(pip_install) --no-deps --no-build-isolation -e sdk
	@touch $@

$(venv)/.dev: $(venv)/.run $(requirements)/dev.txt sdk/pyproject.toml | $(venv)/.compiled
	@echo "Installing what the tests need ..."
	$(pip_install) --require-hashes -r $(requirements)/dev.txt
	$(pip_install) --no-deps --no-build-isolation -e sdk
	@touch $@
