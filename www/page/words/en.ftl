### Every text of the page, in English. The syntax is that of Fluent; what stands after a “$” is filled in.

## app

app = Slope of Light

## skip

skip = Go to the readings

## outline

outline = Outline

## untitled

untitled = Untitled notebook

## loading

loading = Opening the notebook…

## no


## section

section-loading = This section is being loaded…
section-failed = The section “{ $name }” could not be loaded ({ $why }). All else works, and what you type is kept. If trying again does not help, load the page again.
section-again = Try again
section-other-notebook = Another notebook was opened before the section “{ $name }” was there: what you asked of it was not done. Ask again where it belongs.

## strip

strip-title = Title of the notebook
strip-title-hint = Give this notebook a title
strip-result = Result so far
strip-no-result = no result yet
strip-rows = { $used } of { $all } rows used
strip-no-notices = no notices
strip-notices =
    { $n ->
        [one] { $n } notice
       *[other] { $n } notices
    }
strip-undo = Undo
strip-redo = Redo
strip-notebooks = Notebooks
strip-settings = Settings

## saving

saving-saved = Saved
saving-saving = Saving…
saving-not-saved = Not saved
saving-reading = Read only
saving-no-journal = This browser gives the page no place to keep your work. Take the bundle before you close the page.
saving-full = The browser’s storage is full: your last changes are not saved. Take the bundle now; deleting notebooks you no longer need makes room. The page goes on trying.
saving-failed = Your last changes are not saved ({ $why }). The page goes on trying; take the bundle to be sure.
saving-shelf-full = The browser’s storage is nearly full. Your work is still saved edit by edit; deleting notebooks you no longer need makes room.
saving-other-tab = This notebook is being written in another window. You are reading along here.
saving-take-over = Write here instead
saving-apart-title = { $title } (typed in another window)
saving-apart = Another window came to write before your last changes were saved. They are kept in “{ $title }”.
saving-open-apart = Open it
saving-try-again = Try again now
saving-stay = The last changes of this notebook are not saved yet. Take the bundle first.
saving-aside = { $n } later changes of this notebook don’t follow on from what is stored, so they were set aside, not lost.
saving-take-bundle = Take the bundle
saving-dismiss = Close this message
saving-cannot-open = “{ $title }” can’t be opened and was left as it is: { $why }

## cautions

cautions-title = Cautions
cautions-lead = Read these before the beam is on. The word of your local laser safety officer and your local code stand above everything on this page. This page computes no safe exposure.
cautions-beam = One pulse of ultraviolet, visible or infrared laser light can blind, also by a reflection. Ultraviolet also harms the skin. An invisible beam gives no warning.
cautions-eyewear = Wear eyewear rated for the wavelength in use. Take off rings and watches.
cautions-path = Keep the beam path closed, matt, and below eye level, with a beam stop behind the last rail.
cautions-carriage = Move carriages only with the shutter closed. Look at ultraviolet only by way of a fluorescing card.
cautions-supply = A pulse supply holds a lethal charge after it is switched off. Leave its housing closed.
cautions-rules = Laser classes and the controls they call for: IEC 60825-1 and the rules of your place.
cautions-summary = What to know before the beam is on
cautions-read = I have read them

## apparatus

apparatus-title = Apparatus
apparatus-carriage = Carriage
apparatus-path = The carriage carries
apparatus-paths-detector = detector B (the light goes along the rail once)
apparatus-paths-mirror = a mirror (the light goes there and back)
apparatus-source = Source
apparatus-screen = Screen
apparatus-air = Air
apparatus-air-hint = Air slows the pulse by about 3 parts in 10 000. Leave these empty if you did not read them.
apparatus-drawing = The bench, to scale
fields-wavelength = Wavelength in vacuum
fields-pulse_rate = Pulse rate
fields-beam_angle = Beam against the rail, at most ±
fields-small_divisions = Small divisions in one division
fields-edge_half_width = An edge is read to within ±
fields-edge_reason = Why that width
fields-screen_width = Divisions across the screen
fields-time_base_uncertainty = Time base: relative uncertainty
fields-temperature = Temperature
fields-pressure = Pressure
fields-humidity = Relative humidity
fields-carbon_dioxide = Carbon dioxide

## bench

bench-position-unknown = its place is not known yet.
bench-rail = { $name } ({ $rows ->
        [one] { $rows } row
       *[other] { $rows } rows
    }): { $stands }

## rails

rails-title = Rails
rails-hint = From the splitter outwards. Each ruler counts from its own end; the splice says where the rail stands.
rails-add = Add a rail
rails-remove = Remove this rail
rails-removed = { $name } was removed. Its rows keep what was typed.
rails-numbered = Rail { $n }
rails-legend = Rail { $n }: { $name }
rails-fields-name = Name in the readings
rails-fields-from = First mark
rails-fields-to = Last mark
rails-fields-reading_uncertainty = Uncertainty of a reading
rails-fields-scale_uncertainty = Relative uncertainty of the scale
rails-unit = Ruler counts in
rails-units-millimetre = millimetres
rails-units-centimetre = centimetres
rails-units-metre = metres
rails-units-inch = inches
rails-sense = Moving away, readings
rails-senses-grows = grow
rails-senses-falls = fall

## splice

splice-legend = Where it stands
splice-kind = Known from
splice-kinds-unsaid = not said yet
splice-kinds-at_splitter = the mark at the splitter
splice-kinds-at_distance = a mark at a stated distance
splice-kinds-joined = marks that meet
splice-kinds-overlap = positions read on both rails
splice-kinds-free = nothing: let the line find it
splice-mark = Mark on this rail
splice-mark-at-splitter = Mark at the splitter
splice-distance = Its distance from the splitter
splice-mark_before = Meets this mark on the rail before
splice-gap = Gap between them
splice-uncertainty = Standard uncertainty
splice-here = Position { $n }, on this rail
splice-before = Position { $n }, on the rail before
splice-add-pair = Add a position
splice-remove-pair = Remove position { $n }

## settings

settings-title = Time base settings
settings-hint = Only where a setting has an uncertainty of its own. Rows of one setting share its error.
settings-add = Add a setting
settings-remove = Remove
settings-legend = Setting { $n }
settings-time = Time per division
settings-uncertainty = Relative uncertainty

## shared

shared-title = Other errors
shared-hint = For an error that no rail and no setting accounts for. One that rows share moves them all together; one that is each row’s own scatters them.
shared-add = Add an error
shared-remove = Remove
shared-legend = Error { $n }
shared-name = What it is
shared-acts-on = Acts on
shared-acts-distances = distances
shared-acts-delays = delays
shared-effect = As
shared-effects-offset = the same amount on each
shared-effects-scale = the same fraction of each
shared-effects-noise = an amount of its own on each
shared-rows = On
shared-all = all rows
shared-rail = rows on { $name }
shared-time-base = rows at { $text } ns per division
shared-chosen = chosen rows
shared-which = Chosen rows
shared-uncertainty = Standard uncertainty
shared-shape = Its distribution
shared-shapes-normal = normal
shared-shapes-rectangular = rectangular
shared-shapes-triangular = triangular
shared-shapes-arcsine = arcsine
shared-shapes-student = Student’s t
shared-freedom = Degrees of freedom

## readings

readings-title = Readings
readings-hint = One row for each carriage position. Enter goes to the next row, Tab to the next cell. A block copied from a spreadsheet can be pasted into any cell. A press on a row’s number tells how it was worked out.
readings-start = No readings yet. Type in the row below; what stands there in grey is proposed and is taken when you type or press Enter.
readings-direct = Give distance or delay directly
readings-caption = Readings, one row for each carriage position
readings-row = Row
readings-columns-rail = Rail
readings-columns-reading = Reading
readings-columns-time_base = Time base
readings-columns-edge_a = Edge A
readings-columns-edge_b = Edge B
readings-columns-distance = Distance given
readings-columns-distance_uncertainty = its u
readings-columns-delay = Delay given
readings-columns-delay_uncertainty = its u
readings-columns-remark = Remark
readings-units-reading = ruler’s unit
readings-units-time_base = ns/div
readings-units-edge_a = div
readings-units-edge_b = div
readings-units-distance = m
readings-units-distance_uncertainty = m
readings-units-delay = ns
readings-units-delay_uncertainty = ns
readings-outputs-distance = d
readings-outputs-delay = Δt
readings-outputs-residual = Residual
readings-output-units-distance = m
readings-output-units-delay = ns
readings-output-units-residual = in u
readings-output-names-distance = Distance
readings-output-names-delay = Delay
readings-output-names-residual = Residual
readings-strike = Strike out
readings-strike-row = Strike out row { $n }
readings-restore = Restore
readings-restore-row = Restore row { $n }
readings-not-used = not used yet
readings-new-row = new
readings-work-of = How row { $n } was worked out
readings-new-cell = { $column }, new row
readings-cell = { $column }, row { $n }
readings-struck = Struck out: { $reason }
readings-problem = { $column }: { $problem }

## plan

plan-title = Plan
plan-hint = Before the lab: where to read, and what that will give. Type the positions, or move their handles on the rails by hand or with the arrow keys.
plan-drawing = The rails to scale, with the planned positions
plan-ends = { $near } at { $nearAt }, { $far } at { $farAt }
plan-caption = Planned positions
plan-position = No.
plan-columns-rail = Rail
plan-columns-reading = Reading
plan-columns-time_base = ns/div
plan-columns-repeats = Repeats
plan-distance = d
plan-cell = { $column }, planned position { $n }
plan-handle = Planned position { $n }
plan-place = { $reading } on rail { $rail }, { $distance } from the splitter
plan-moving = { $place }. { $expected }
plan-expected = Expected: u(v)/v = { $u } from { $rows } rows.
plan-limits = What limits it: { $name } ({ $share } % of the variance).
plan-compared = Expected { $planned } from { $rows } rows; achieved { $achieved } from { $taken }.
plan-turned-out-kept = The run keeps what the plan promised.
plan-turned-out-missing = Rows are still missing.
plan-turned-out-worse = The readings scatter more, or stand elsewhere, than was planned: compare the parts of the budget.
plan-warnings-off_rail = Off the rail: position { $n }.
plan-warnings-beyond_reach = Position { $n }: the delay is longer than a pulse period, so the next pulse comes first.
plan-warnings-off_screen = Position { $n }: the delay finds no room on the screen at that time base.
plan-warnings-side = Rail { $rail } has { $have } of the three positions or more that each side of a splice needs: fewer can’t show a step there.
plan-warnings-cluster = All positions lie within { $length } of the { $whole } there are: a short lever gives a poor slope.
plan-warnings-few = Planned rows: { $rows }. With fewer than 5 little is left to judge the scatter by.
plan-add = Plan a position
plan-remove = Remove planned position { $n }
plan-removed = Position { $n } was removed.
plan-take = Take the plan into the readings
plan-taken = The planned rows stand in the readings.
plan-offers-spread = { $rows } rows spread over all rails, where bends and splices can be tested: u(v)/v = { $u }.
plan-offers-ends = { $rows } rows, half of them at either end, the longest lever, blind to bends and splices: u(v)/v = { $u }.
plan-use = Plan these
plan-planned = These positions are planned now.
plan-next = The next reading
plan-effect = : u(v)/v from { $before } to { $after }
plan-reasons-first = A line needs two places, the farther apart the better.
plan-reasons-little = No single reading helps much any more: look at what limits the whole.
plan-reasons-lever = Of all places this one lowers it most: { $arm } from the middle of the others, it turns the line most.
plan-reasons-side = Positions on this rail: { $have }. With three or more the step at its splice can be tested.
plan-reasons-gap = The nearest reading is { $gap } away: a bend or a step could hide there.
plan-add-row = Add this row
plan-add-to-plan = Add to the plan
plan-figures-title = What to expect
plan-figures-expected-name = expected uncertainty of v
plan-figures-expected-source = ISO/TS 28037:2010, clauses 9 and 10
plan-figures-expected-meaning = The engine that analyses the readings is asked before there are any: weights hang on what is stated and on where rows stand, not on what they read.
plan-figures-reading-name = of this, from reading
plan-figures-reading-source = ISO/TS 28037:2010, clauses 6 and 7
plan-figures-reading-meaning = Each row has its own: repeats and a longer lever reduce it. The formula is that of rows which are all alike and share nothing.
plan-figures-shared-name = of this, shared by rows
plan-figures-shared-meaning = Splices, scales, time bases, the beam, at the weights of this plan.
plan-figures-floor-name = what no repeat can buy
plan-figures-floor-meaning = However often all is read, what rows share stays. Better splices, scales or time bases lower it.
plan-figures-again-name = with one more repeat of each position
plan-figures-again-meaning = A repeat is a row of its own: the carriage is set anew.
plan-figures-rail-name = with one more rail like the last
plan-figures-rail-meaning = Joined as well as the last one, with positions as on it.
plan-figures-faster-name = with a time base twice as fast
plan-figures-faster-meaning = Half the time per division wherever the delay still finds room on the screen.
plan-figures-achieved-name = achieved so far
plan-figures-achieved-meaning = What the readings gave, by the budget.
plan-figures-reach-name = farthest distance that the pulse rate allows
plan-figures-reach-meaning = There the delay is one pulse period: beyond it the next pulse comes first.
plan-figures-step-name = shortest step that the screen tells apart
plan-figures-step-source = common practice
plan-figures-step-meaning = Nearer places give delays that differ by less than twice the standard uncertainty of the difference, at the fastest time base planned.
plan-faster-rows = { $u } ({ $rows } rows)
plan-none-faster = no delay finds room then
plan-rehearsal = Rehearsal
plan-rehearsal-hint = Practise the whole lab: a new notebook with this bench and plan, whose readings are simulated with errors as you stated them. What was so is told when you ask.
plan-rehearse = Rehearse
plan-rehearsal-of = Rehearsal: { $title }
plan-rehearsing = This is the rehearsal, a notebook of its own. Its readings are simulated.
plan-show-truth = Show what was so
plan-truth-c = speed of light in vacuum
plan-truth-t0 = delay at zero distance
plan-stated = { $value } (stated: u = { $u })

## pasted

pasted-turned = The block was written with the other decimal mark: its numbers were given this notebook’s.
pasted-headed = The headings “{ $headings }” were left out.

## row

row-work-none = This row tells no distance and no delay yet.
row-work-close = Close

## delays

delays-title = Delays
delays-hint = Where the delay of a row comes from, if it is not typed: a photograph of the screen, or recorded traces.
fields-mark_uncertainty = A mark on a picture: standard uncertainty
fields-trace_level = Fixed level over the baseline
fields-trace_fraction = Constant fraction
delays-from-picture = picture
delays-from-traces = traces
delays-jump-picture = Show the picture of row { $n }
delays-jump-traces = Show the traces of row { $n }

## pictures

pictures-title = Photographs of the screen
pictures-hint = Add the pictures of a whole run at once: choose them, drop them here, or paste one. A file name such as “1250 mm.jpg” tells the reading. Each picture is scaled down, freed of what the camera wrote beside the pixels, and kept in this browser.
pictures-add = Add pictures
pictures-columns = Divisions across the grid
pictures-rows = Divisions down the grid
pictures-progress = Taking in picture { $n } of { $all }…
pictures-added =
    { $n ->
        [one] { $n } picture was added.
       *[other] { $n } pictures were added.
    }
pictures-refused-title = Not taken:
pictures-full = { $name }: the browser’s storage is full, so the picture was not taken. Everything before it is kept. Take the bundle; deleting notebooks you no longer need makes room.
pictures-twice = { $name } is the picture of row { $n } already: the same picture again is no other reading.
pictures-twice-chosen = { $name } was chosen twice, and is taken once.
pictures-other-notebook = Another notebook was opened meanwhile: the pictures were not added. Add them again where they belong.
pictures-choose = Picture
pictures-option = Row { $n }: { $name }
pictures-option-unmarked = Row { $n }: { $name } (to be marked)
pictures-left = { $marked } of { $all } pictures are marked.
pictures-loading = Looking at the picture…
pictures-missing = { $name } is not kept in this browser. Its marks are numbers, so the row counts all the same; a bundle holds the picture too.
pictures-missing-marks = { $name } is not kept in this browser, and nothing is marked on it yet. Open a bundle that holds it, or add it again.
pictures-broken = { $name }: the browser can’t show the picture that it kept. Add it again.
pictures-picture = The picture with its grid drawn back over it
pictures-mark-group = Marks
pictures-proposed = These marks are proposed. Look whether the dashed grid lies on the grid of the screen and whether A and B stand at half the height of their edges; move what does not, then accept.
pictures-serves = The corner marks of row { $n } serve this picture too: its grid lies where they say.
pictures-moved = The camera has moved since row { $n }: this grid lies elsewhere, so corner marks of its own are proposed.
pictures-unseen = The corner marks of row { $n } are taken. They could not be checked, because no grid was found here: look whether the dashed grid lies on the lines.
pictures-not-found = Nothing is proposed ({ $why }). Move each mark to its place.
pictures-no-edge = { $name } was not found: move its mark there.
pictures-how = Drag a mark, or click where the chosen one belongs. Arrow keys move it by a pixel, with Shift by a tenth, with Alt by ten. Enter accepts.
pictures-accept = Accept the marks
pictures-next = Next picture to be marked
pictures-still-sought = Not accepted yet: move { $names } first.
pictures-grid-wrong = Not accepted yet: { $why }.
pictures-accepted = Row { $n } is marked.
pictures-accepted-unused = Row { $n } is marked, but not used in the line yet: { $lacks }.
pictures-all-marked = All pictures are marked.
pictures-again = { $name }, mark { $n }
pictures-mark-again = Mark { $name } once more
pictures-drop-mark = Remove the chosen mark
pictures-move-first = Put the new mark where you see the edge: it counts once it was moved.
pictures-own-corners = Corner marks of its own
pictures-shared = Its corner marks serve { $n } pictures: moving one moves all those rows.
pictures-take-off = Take the picture off this row
pictures-taken-off = Row { $n } has no picture any more.
pictures-marks-a = Edge A
pictures-marks-b = Edge B
pictures-marks-corner = Corner
pictures-marks-check = Check
pictures-corners-upper-left = Upper left corner
pictures-corners-upper-right = Upper right corner
pictures-corners-lower-right = Lower right corner
pictures-corners-lower-left = Lower left corner
pictures-check = Crossing { $n } that checks the lens
pictures-place = { $x } pixels across, { $y } down, { $state }
pictures-states-proposed = proposed
pictures-states-sought = not found
pictures-states-set = moved by hand
pictures-states-taken = accepted
pictures-fields-rail = Rail
pictures-fields-reading = Reading
pictures-fields-time_base = Time per division

## traces

traces-title = Recorded traces
traces-hint = Add the trace files of a whole run at once: choose them or their folder, or drop them here. Both traces may stand in one file, or in one file each. A file name such as “A 1250 mm ch1.csv” tells rail, reading and trace.
traces-add = Add trace files
traces-add-folder = Add a folder of them
traces-looking = Looking at the files…
traces-busy = Other files are still being worked on, so what was added now was left out ({ $n ->
        [one] { $n } file
       *[other] { $n } files
    }). Add it again once that has ended.
traces-given = { $files } files, { $pairs } positions. Look whether they are read rightly, then measure.
traces-measure-all = Measure all
traces-forget = Leave them out
traces-again = Measure again
traces-again-hint = After another level or fraction was stated.
traces-stop = Stop
traces-progress = Progress of the measurement
traces-done = { $done } of { $all } positions
traces-done-again = { $done } of { $all } again, by the level that all share
traces-measured =
    { $n ->
        [one] { $n } position was measured.
       *[other] { $n } positions were measured.
    }
traces-unchanged = Measured; nothing changed.
traces-stopped = Stopped. { $n } positions were measured and stand in the readings; their fixed level is that of each pair, until all are measured again.
traces-undo = One undo takes them all back.
traces-refused-title = Not taken:
traces-more = and { $n } more.
traces-other = { $name }: no trace file but a picture or a notebook; it was left out.
traces-other-notebook = Another notebook was opened meanwhile: nothing was put into it. Add the files again where they belong.
traces-bad-wish = Nothing was measured: correct the level or the fraction first.
traces-needed = Row { $row }: { $name } is not kept in this browser. Add the file again to measure it anew; until then the row counts as it stands.
traces-not-kept = { $name }: measured, but the file is not kept in this browser ({ $why }). To look at it or measure it again, add it again.
traces-many-too-large = { $n } files are over 8 MB: measured, but not kept in this browser. To look at them or measure again, add them again.
traces-too-large-to-keep = it is over 8 MB
traces-layout-of = As { $name } reads. What you correct holds for all files.
traces-layout-delimiter = Fields are parted by
traces-layout-delimiters-tab = tabs
traces-layout-delimiters-semicolon = semicolons
traces-layout-delimiters-comma = commas
traces-layout-delimiters-bar = bars
traces-layout-delimiters-space = spaces
traces-layout-decimal = Decimal mark
traces-layout-decimals-point = point
traces-layout-decimals-comma = comma
traces-layout-first-line = First line of samples
traces-layout-step = From sample to sample, ns
traces-layout-table = Columns and first samples
traces-layout-column = Column
traces-layout-holds = Holds
traces-layout-unit = Unit
traces-layout-line = Line { $n }
traces-layout-roles-time = time
traces-layout-roles-channel_a = trace A
traces-layout-roles-channel_b = trace B
traces-layout-roles-ignored = nothing needed
traces-layout-unit-none = none
traces-layout-role-of = What column { $name } holds
traces-layout-unit-of = Unit of column { $name }
traces-layout-supposed = supposed
traces-layout-settings = What else the file says
traces-estimator = How edges are timed
traces-estimators-constant_fraction = constant fraction: each edge at the same part of its own height
traces-estimators-fixed_level = fixed level: both edges at the same voltage; it walks, as a smaller pulse crosses later
traces-estimators-edge_line = line through 10 to 90 % of each edge, down to its baseline
traces-estimators-cross_correlation = cross-correlation: the shift at which the edges are most alike
traces-estimators-shift_and_scale = shift and scale of one edge upon the other, by least squares
traces-choose = Traces of
traces-option = row { $n }: { $name }
traces-view = Both traces of the row
traces-view-keys = Both traces; plus and minus zoom, arrows move, 0 shows the whole pulse
traces-zoom-in = Zoom in
traces-zoom-out = Zoom out
traces-earlier = Earlier
traces-later = Later
traces-reset = Whole pulse
traces-loading = Reading the traces…
traces-missing = { $name } is not kept in this browser, so the traces can’t be shown. What was measured counts all the same; add the file again to look at it.
traces-take-off = Take the traces off this row
traces-taken-off = Row { $n } has no traces any more.
traces-walk = Fixed level less constant fraction, against distance

## only

only-here = This browser gives the page no place to keep files, as in a private window: they last until the page is closed. Take the bundle (.zip) before that: it holds them.

## strike

strike-title = Strike out row { $n }
strike-hint = The row stays visible and can be restored. The reason goes into the notebook and the report.
strike-reason = Reason
strike-needed = Write the reason first.
strike-confirm = Strike out
strike-cancel = Cancel

## line

line-title = Line
line-plot = Delay against distance
line-residuals = Residuals
line-figures = The line
line-checks = Checks
line-checks-hint = Other ways to look at the same rows. None of them changes the result.

## uncertainty

uncertainty-title = Uncertainty
fields-coverage = Coverage probability

## budget

budget-caption = The budget: components of the uncertainty, the largest first
budget-hint = Move a slider to see what the uncertainty would be if that component were smaller or larger. It changes nothing in the notebook.
budget-columns-name = Component
budget-columns-acts_on = Acts on
budget-columns-u = u
budget-columns-shape = Distribution
budget-columns-degrees_of_freedom = ν
budget-columns-sensitivity = Sensitivity
budget-columns-contribution = Effect on c
budget-columns-share = Share
budget-columns-what_if = What if
budget-what-if-of = What if: { $name }
budget-answer = With this component { $factor }:
budget-nothing = no figure changes.
budget-instead-of = instead of { $now }
budget-reset = Back to × 1

## trials

trials-title = Trials
trials-hint = A check of the budget (Monte Carlo): every input is drawn from its distribution, again and again, and the whole analysis is done for each draw. The same seed gives the same digits in every browser.
trials-wanted = Number of trials
trials-seed = Seed
trials-new-seed = New seed
trials-start = Run the trials
trials-stop = Stop
trials-progress = Progress of the trials
trials-running = Running…
trials-done = Done.
trials-stopped = Stopped. This is what came of the trials so far.
trials-changed = Stopped, because the notebook changed.
trials-stale = The notebook has changed since. What follows belongs to it as it was.
trials-failed = The trials could not be run: { $why }
trials-unsaid = the browser did not let the page start its helpers and does not say why.
trials-here = Run them in the page itself (slower)
trials-plot = What the trials gave

## evidence

evidence-unsaid = the browser does not say why
evidence-refusals-too_large = { $what }: this file is larger than 64 MB. Save the trace with fewer samples about the pulse, or the picture in a smaller size.
evidence-refusals-too_many = { $what } files are more than the 2,000 that are taken at once. Add them in parts, such as a folder for each rail.
evidence-refusals-file = { $what }: the file can’t be read any more. It may have been moved, changed or taken away; choose it again.
evidence-refusals-decode = { $what }: the browser can’t read this picture. It may be damaged; copy it again from the camera, or save it anew.
evidence-refusals-no_canvas = This browser can’t work on pictures beside the page. Use a newer one.
evidence-refusals-start = What reads traces and pictures could not be started ({ $what }). Check the connection, and try again.
evidence-refusals-crash = Reading traces or pictures came to a bad end ({ $what }). Nothing of the notebook is lost; try again, or with a smaller file.
evidence-refusals-stopped = Stopped.
evidence-refusals-nothing_kept = The traces are no longer at hand. Open their files again.

## result

result-title = Result
result-figures = From the slope to c
result-sentences = In words
result-copy = Copy
result-copied = Copied.
result-not-copied = The browser did not let the page copy. Select the text and copy it by hand.
result-choice = Which uncertainty do you claim?
result-bases-stated = the one from what was stated
result-bases-scatter = the one from the scatter of the points
result-reason = Why

## seal

seal-mark = sealed
seal-title = Seal the result
seal-hint = Until the seal is opened, every v and c that is shown carries a hidden factor within ±8 %. So the known answer can’t steer which rows are kept and what is stated. A notebook can be sealed once.
seal-put = Put the seal on
seal-sealed = The result is sealed: every v and c that is shown carries a hidden factor within ±8 %.
seal-open = Open the seal…
seal-open-title = Open the seal?
seal-open-hint = The true v and c will be shown from then on. This can’t be undone, and it is written in the history.
seal-open-sure = Open it for good
seal-keep = Keep it sealed

## report

report-not-in-bundle =
    { $n ->
        [one] One picture is not kept in this browser: the bundle holds its marks only.
       *[other] { $n } pictures are not kept in this browser: the bundle holds their marks only.
    }
report-not-kept = { $name }: the browser could not keep the picture ({ $why }). Try again.
report-title = Report
fields-people = Who measured
fields-place = Where and when
fields-aim = Aim
fields-method = Method
fields-discussion = Discussion
report-take = Take away
report-open = Open the report
report-open-hint = In a new tab, to read, print or keep as PDF.
report-blocked = The browser did not let the page open a tab. The report was offered as a file instead.
report-bundle = Take the bundle (.zip)
report-bundle-hint = The whole notebook with tables, charts and report. It can be opened again here.
report-tables = Readings table
report-format = Form
report-formats-csv = CSV
report-formats-latex = LaTeX
report-formats-markdown = Markdown
report-copy-table = Copy the table
report-take-table = Take it as a file
report-open-file = Open a bundle or notebook file
report-open-file-hint = It becomes a notebook of its own. You can also drop the file anywhere on this page.
report-drop = Let go: a notebook is opened, pictures go to the rows.
report-opened = “{ $title }” is open.
report-not-opened = { $name } was not opened: { $why }

## notices

notices-weights-grave = Serious
notices-weights-look = Worth a look
notices-weights-know = Good to know
notices-more = and { $n } more
notices-row = row { $n }
notices-in-row = { $weight }: { $text }

## notebooks

notebooks-title = Notebooks
notebooks-blank = New blank notebook
notebooks-demo = New from the demo
notebooks-demo-sets-photographs = Demo with photographs
notebooks-demo-sets-traces = Demo with traces
notebooks-no-demo = The demo could not be read.
notebooks-open = Open
notebooks-current = open now
notebooks-rename = Rename
notebooks-new-name = New title
notebooks-keep-name = Keep this title
notebooks-duplicate = Duplicate
notebooks-copy-of = { $title } (copy)
notebooks-delete = Delete
notebooks-deleted = “{ $title }” was deleted.
notebooks-bin = Deleted notebooks
notebooks-put-back = Put back
notebooks-forget = Delete for good
notebooks-forget-sure = Press again to delete for good
notebooks-close = Close
notebooks-busy = That notebook is being written in another window. Close it there first.
notebooks-nothing-kept = This browser gives the page no place to keep them: these notebooks last until you close the page.
notebooks-action = { $action }: { $title }

## preferences

preferences-title = Settings
preferences-theme = Light or dark
preferences-themes-auto = as the system
preferences-themes-light = light
preferences-themes-dark = dark
preferences-mark = Decimal mark in this notebook
preferences-marks-point = point: 1.5
preferences-marks-comma = comma: 1,5
preferences-close = Close

## field

field-if-empty = If empty: { $value }

## undo

undo = Undo
