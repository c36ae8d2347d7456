### Every text of the notebook, in English, in the syntax of Fluent. What stands after a “$” is filled in.
###
### Terms: JCGM 200:2012 (VIM) and JCGM 100:2008 (GUM). A limit ±a of a rectangular distribution is a standard uncertainty
### of a ÷ √3 (GUM 4.3.7). Safety for users of lasers: IEC TR 60825-14.

## The page

language = en
language-name = English
app = Slope of Light
outline = Outline
outline-help = Help
leaf-bench = Bench
beside = What follows
beside-bench = Drawing and plan
beside-line = Line and residuals
beside-report = Result and printed pages
untitled = Untitled notebook
list = { $all }
loading = Opening the notebook…
close = Close
stop = Stop
remove = Remove
browser-says = the browser says: “{ $words }”

## A section that comes later

section-loading = This section is being loaded…
section-failed = The section “{ $name }” could not be loaded ({ $why }). Everything else works, and what you type is kept. Try again; if that does not help, reload the page.
section-again = Try again
section-waits = Nothing to show yet: see the section “{ $section }”.
section-other-notebook = Another notebook was opened before the section “{ $name }” was loaded, so your request was not carried out. Repeat it in the notebook it was meant for.

## The strip at the top

strip-title = Title of the notebook
strip-title-hint = Give this notebook a title
strip-no-c = not determined yet
strip-no-result = no result yet
strip-result-said = c is now { $c }
strip-rows =
    { $all ->
        [one] { $used } of { $all } row included
       *[other] { $used } of { $all } rows included
    }
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

## Saving

saving-saved = Saved
saving-saving = Saving…
saving-not-saved = Not saved
saving-reading = Read only
saving-no-journal = This browser blocks storage: nothing is saved. Download the bundle before you close the page.
saving-full = The browser’s storage is full: your last changes are not saved. Download the bundle now. Delete notebooks permanently to make room. The page keeps trying.
saving-failed = Your last changes are not saved ({ $why }). The page keeps trying. Download the bundle to be safe.
saving-no-answer = the database does not answer
saving-shelf-full = The browser’s storage is nearly full. Your work is still saved edit by edit. Delete notebooks permanently to make room.
saving-other-tab = This notebook is open for writing in another window. Here it is read-only.
saving-take-over = Write here instead
saving-apart-title = { $title } (typed in another window)
saving-apart = Another window took over before your last changes were saved. They are kept in the notebook “{ $title }”.
saving-open-apart = Open it
saving-try-again = Try again now
saving-stay = The last changes of this notebook are not saved yet. Download the bundle first.
saving-aside =
    { $n ->
        [one] { $n } later change of this notebook could not be joined to what is stored; it is kept separately.
       *[other] { $n } later changes of this notebook could not be joined to what is stored; they are kept separately.
    }
saving-take-bundle = Download the bundle
saving-dismiss = Close this message
saving-cannot-open = “{ $title }” could not be opened and was left unchanged: { $why }

## Without a network

offline-newer = A newer version of this page is ready. Your work is kept when you change to it.
offline-use = Use it now

## Cautions

cautions-title = Cautions
cautions-lead = Read before the laser is switched on. The instructions of your laser safety officer and your local rules take precedence over this page. It calculates no exposure limits.
cautions-summary = What to watch for
cautions-group-invisible = This beam is invisible
cautions-invisible = The stated wavelength, { $wavelength }, is outside the visible range (400 nm to 700 nm, IEC 60825-1). You cannot see this beam, and your eyes do not close or turn away from it. Treat it as on whenever the source has power.
cautions-find = Find an invisible beam only with a detector, or with a viewing card made for its wavelength where your laser safety officer allows it: never with your eye.
cautions-group-beam = The beam
cautions-eyes = Never look into the beam or along the rail, whatever the class of the laser. One pulse can blind you, even by a reflection. An invisible beam gives no warning.
cautions-height = Keep your eyes above the beam. Close the shutter before you bend to read a ruler: your eyes come to beam height. Seated and shorter people’s eyes may already be there.
cautions-reflections = Metal rulers, carriages, tools, rings and watches reflect: take off jewellery. Keep the beam path enclosed, or between matt surfaces, and away from the height of anyone’s eyes. Put a beam stop behind the last rail.
cautions-group-protection = Eyewear and skin
cautions-eyewear = Wear eyewear rated for both the wavelength and the pulses in use. Eyewear is never permission to look into the beam.
cautions-skin = Ultraviolet light also harms the skin: keep your skin covered. Look for an ultraviolet beam with a fluorescing card only where your laser safety officer allows it, and with eyewear on.
cautions-group-trained = Alignment, high voltage and gas
cautions-alignment = Only trained people align the beam, at the lowest power. Move carriages only with the shutter closed.
cautions-voltage = Pulse supplies and the bias supplies of detectors are at high voltage, and so are their cables: never unplug or open one. A pulse supply can hold a lethal charge after it is switched off. Only authorised service staff open a housing.
cautions-gas = Gas sources: the cylinders must be secured and the room ventilated. Electric discharges and ultraviolet light can make ozone, which harms the lungs.
cautions-group-room = The room
cautions-room = Rails and cables are trip hazards. Keep escape routes free. Close the door, put up the warning sign, and keep bystanders out.
cautions-group-stop = Stopping, and after an exposure
cautions-stop = Know how to stop before you start: shutter, key switch, emergency stop.
cautions-exposure = After a possible exposure of an eye or the skin: stop, report it at once, and have it examined by a doctor, even if nothing hurts.
cautions-rules = Controls for users: IEC TR 60825-14 and your national rules. Laser classes: IEC 60825-1.
cautions-name = Your name
cautions-name-needed = Type your name first.
cautions-read-by = Cautions read: { $name }, { $date } at { $time } UTC. This is no permission.
cautions-read-by-undated = Cautions read: { $name }. This is no permission.
cautions-unread = Nobody has stated in this notebook that these cautions were read.
cautions-local-edit = Add local rules and a contact
cautions-local-hint = For teachers. They are shown above the cautions, here and in the report, and are kept in this notebook.
fields-local_rules = Rules of this laboratory
fields-local_contact = Contact
cautions-contact = Contact: { $contact }
cautions-read = I have read this. It is no permission: start when the person in charge says so.

## What comes next in a notebook without readings

next-cautions = First: read the cautions, and type your name below them.
next-go-cautions = Go to the cautions
next-rail = Next: describe the bench, rail by rail.
next-go-rail = Go to the rails
next-place = Next: say where each rail lies.
next-go-place = Go to that rail
next-row = The rails are described. Next: the first reading.
next-go-row = Go to the readings

## Apparatus

apparatus-title = Apparatus
apparatus-path = On the carriage
apparatus-paths-detector = detector B (the light travels along the rail once)
apparatus-paths-mirror = a mirror (the light travels there and back)
apparatus-beam = A beam at an angle is
apparatus-beams-wide = wider than the detector: the light travels r·cos θ
apparatus-beams-followed = thin, and the detector follows it across the rail: the light travels r ÷ cos θ
apparatus-beam-hint = r is the distance read along the rail, θ the angle between beam and rail. The correction makes c smaller for a wide beam, larger for a thin one.
apparatus-source = Source
apparatus-screen = Screen
apparatus-air = Air
apparatus-air-hint = Air slows the pulse by about 3 parts in 10 000. Leave these fields empty if you did not measure them. A value may carry its standard uncertainty in brackets, as in 21.5(3); a number typed after it with ± is taken as the same.
apparatus-instruments = Instruments, cables and trigger
apparatus-instruments-hint = What somebody else needs to set up the same bench: types and serial numbers, lengths of the cables, the way to the fixed detector, what the screen is triggered by. Nothing is calculated from this; the report shows it.
photo-title = Photo of the set-up
photo-add = Add a photo of the set-up
photo-coming = { $name } is being read…
photo-of = The set-up: { $name }
photo-missing = { $name } is not kept in this browser. It is in the bundle it came with.
photo-remove = Remove the photo
photo-removed = The photo of the set-up was removed.
apparatus-blank = Carriage, source, rails, screen, air
apparatus-lines-detector =
    { $n ->
        [one] One rail: { $rails }. Detector B on the carriage
       *[other] { $n } rails: { $rails }. Detector B on the carriage
    }
apparatus-lines-mirror =
    { $n ->
        [one] One rail: { $rails }. A mirror on the carriage
       *[other] { $n } rails: { $rails }. A mirror on the carriage
    }
apparatus-drawing = The bench, to scale
fields-instruments = Instruments, with types and serial numbers
fields-cables = Cables, with lengths and labels
fields-fixed_arm = Fixed arm
fields-trigger = Trigger
fields-edge_fraction = Fraction of their height at which edges are read
fields-wavelength = Wavelength in vacuum
fields-pulse_rate = Pulse rate
fields-beam_angle = Largest possible angle between beam and rail
fields-small_divisions = Small divisions per division
fields-edge_half_width = Uncertainty of one edge reading
fields-edge_reason = Reason for this uncertainty
fields-screen_width = Divisions across the screen
fields-time_base_uncertainty = Time base: relative uncertainty
fields-temperature = Air temperature
fields-pressure = Air pressure
fields-humidity = Relative humidity
fields-carbon_dioxide = Carbon dioxide

## The bench in words

bench-position-unknown = Its position is not known yet.
bench-rail =
    { $rows ->
        [one] { $name } ({ $rows } row). { $stands }
       *[other] { $name } ({ $rows } rows). { $stands }
    }

## Rails

rails-title = Rails
rails-hint = Describe the rails from the splitter outwards. Each ruler has its own zero. The splice, the joint between two rails, says where the next ruler lies.
rails-add = Add a rail
rails-remove = Remove this rail
rails-removed = { $name } was removed. What was typed in its rows is kept.
rails-numbered = Rail { $n }
rails-legend = Rail { $n }: { $name }
rails-fields-name = Name used in the readings
rails-fields-from = First mark
rails-fields-to = Last mark
rails-fields-reading_uncertainty = Uncertainty of a ruler reading
rails-fields-scale_uncertainty = Relative uncertainty of the scale
rails-unit = Unit of the ruler
rails-units-millimetre = millimetres
rails-units-centimetre = centimetres
rails-units-metre = metres
rails-units-inch = inches
rails-sense = When the carriage moves away, readings
rails-senses-grows = increase
rails-senses-falls = decrease
rails-stands = Mark { $mark } is { $distance } from the splitter.
rails-fitted = The position of this rail is fitted with the line, starting from mark { $mark } at { $distance }.
rails-moved = The fit moves this rail outwards by { $step }.
rails-step = The readings show a step of { $step } between this rail, with those joined after it, and the other rails. It is not significantly different from zero ({ $p }).
rails-step-significant = The readings show a step of { $step } between this rail, with those joined after it, and the other rails. It is significantly different from zero ({ $p }).

## Splices

splice-legend = Position of this rail
splice-kind = Known from
splice-kinds-unsaid = not stated yet
splice-kinds-at_splitter = ruler reading at the splitter
splice-kinds-at_distance = measured distance of a mark
splice-kinds-joined = marks that face each other at the joint
splice-kinds-overlap = positions read on both rulers
splice-kinds-free = unknown: fitted with the line
splice-mark = Mark on this rail
splice-mark-at-splitter = Mark at the splitter
splice-distance = Its distance from the splitter
splice-mark_before = Faces this mark on the previous rail
splice-gap = Gap between them
splice-uncertainty = Uncertainty of this position
splice-here = Position { $n }, read on this rail
splice-before = Position { $n }, read on the previous rail
splice-add-pair = Add a position
splice-remove-pair = Remove position { $n }

## Settings of the time base

settings-title = Time base settings
settings-hint = Needed only if one setting of the time base has its own uncertainty. All rows at that setting share it.
settings-add = Add a setting
settings-legend = Setting { $n }
settings-time = Time per division
settings-uncertainty = Relative uncertainty

## Other uncertainty components

shared-title = Other uncertainty components
shared-hint = For an effect not covered by rails or time bases. Common: shifts all its rows together (correlated). Independent: different for every row.
shared-add = Add a component
shared-legend = Component { $n }
shared-name = Name
shared-acts-on = Acts on
shared-acts-distances = distances
shared-acts-delays = delays
shared-effect = Effect
shared-effects-offset = common offset
shared-effects-scale = common scale factor
shared-effects-noise = independent for each row
shared-rows = Rows
shared-all = all rows
shared-rail = rows on rail { $name }
shared-time-base = rows at { $text } ns per division
shared-chosen = chosen rows
shared-which = Chosen rows
shared-uncertainty = Uncertainty of this component
shared-shape = Distribution
shared-shapes-normal = normal
shared-shapes-rectangular = rectangular
shared-shapes-triangular = triangular
shared-shapes-arcsine = arcsine
shared-shapes-student = Student’s t
shared-freedom = Degrees of freedom

## Readings

readings-title = Readings
readings-hint = One row for each carriage position. Enter goes to the next row, Tab to the next cell. Repeated readings of an edge go in one cell, separated by semicolons (;). A block copied from a spreadsheet can be pasted into any cell. Press a row number to see how its distance, delay and residual were calculated.
readings-start = No readings yet. Type in the row below. Grey values are suggestions: typing in the row, or Enter, accepts them.
readings-direct = Enter distance or delay directly
readings-caption = Readings, one row for each carriage position
readings-row = Row
readings-columns-rail = Rail
readings-columns-reading = Ruler reading
readings-columns-time_base = Time base
readings-columns-edge_a = Edge A
readings-columns-edge_b = Edge B
readings-columns-distance = Distance, entered
readings-columns-distance_uncertainty = u(d)
readings-columns-delay = Delay, entered
readings-columns-delay_uncertainty = u(Δt)
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
readings-output-units-residual = normalized
readings-output-names-distance = Distance
readings-output-names-delay = Delay
readings-output-names-residual = Residual
readings-strike = Strike out
readings-strike-row = Strike out row { $n }
readings-restore = Restore
readings-restore-row = Restore row { $n }
readings-not-used = incomplete
readings-new-row = new
readings-work-of = How row { $n } was calculated
readings-new-cell = { $column }, new row
readings-cell = { $column }, row { $n }
readings-struck = Struck out: { $reason }
readings-problem = { $column }: { $problem }
readings-uncertainty-of = { $quantity }, { $u }

## Plan

plan-title = Plan
plan-hint = Before the lab: choose positions and see what uncertainty to expect. Type the positions, or move their handles along the rails with the mouse, a finger or the arrow keys.
plan-drawing = The rails to scale, with the planned positions
plan-ends = { $near } at { $nearAt }, { $far } at { $farAt }
plan-caption = Planned positions
plan-position = No.
plan-columns-rail = Rail
plan-columns-reading = Ruler reading
plan-columns-time_base = ns/div
plan-columns-repeats = Rows
plan-distance = d
plan-cell = { $column }, planned position { $n }
plan-handle = Planned position { $n }
plan-place = { $reading } on rail { $rail }, { $distance } from the splitter
plan-place-effect = { $reading } on rail { $rail }, { $distance } from the splitter: u(v)/v from { $before } to { $after }
plan-moving = { $place }. { $expected }
plan-expected =
    { $rows ->
        [one] Expected: u(v)/v = { $u } from { $rows } row.
       *[other] Expected: u(v)/v = { $u } from { $rows } rows.
    }
plan-limits = Largest component: { $name } ({ $share } % of the variance).
plan-compared =
    { $rows ->
        [one] Expected { $planned } from { $rows } row; achieved { $achieved } from { $taken }.
       *[other] Expected { $planned } from { $rows } rows; achieved { $achieved } from { $taken }.
    }
plan-turned-out-kept = The planned uncertainty was reached.
plan-turned-out-missing = Not all planned rows have been read yet.
plan-turned-out-worse = The uncertainty is larger than planned: compare scatter, positions and budget with the plan.
plan-warnings-off_rail =
    { $n ->
        [one] Position { $positions } is not on its rail.
       *[other] Positions { $positions } are not on their rails.
    }
plan-warnings-beyond_reach =
    { $n ->
        [one] Position { $positions }: the delay is longer than a pulse period, so the next edge A comes before edge B.
       *[other] Positions { $positions }: the delays are longer than a pulse period, so the next edge A comes before edge B.
    }
plan-warnings-off_screen =
    { $n ->
        [one] Position { $positions }: the delay does not fit on the screen at this time base.
       *[other] Positions { $positions }: the delays do not fit on the screen at these time bases.
    }
plan-warnings-side =
    { $have ->
        [one] Rail { $rail } has only { $have } position; at least three on each side are needed to test a splice.
       *[other] Rail { $rail } has only { $have } positions; at least three on each side are needed to test a splice.
    }
plan-warnings-cluster = All positions lie within { $length } of the available { $whole }: a short range gives an uncertain slope.
plan-warnings-few =
    { $rows ->
        [one] Only { $rows } row is planned: with fewer than 5 there are too few degrees of freedom to judge the scatter.
       *[other] Only { $rows } rows are planned: with fewer than 5 there are too few degrees of freedom to judge the scatter.
    }
plan-add = Plan a position
plan-remove = Remove planned position { $n }
plan-removed = Position { $n } was removed.
plan-take = Add the planned rows to the readings
plan-taken = The planned rows were added to the readings.
plan-offers-spread = { $rows } rows spread over all rails, so that curvature and splices can be tested: u(v)/v = { $u }.
plan-offers-ends = { $rows } rows, half at each end (curvature and splice steps cannot be detected): u(v)/v = { $u }.
plan-use = Plan these positions
plan-planned = These positions are now planned.
plan-next = The next reading
plan-reasons-first = A line needs two positions, the farther apart the better.
plan-reasons-little = Another reading will not help much: see the largest component.
plan-reasons-lever = This position reduces u(v) most (largest leverage): it is { $arm } from the mean of the others.
plan-reasons-side =
    { $have ->
        [one] This rail has { $have } position. With three or more, the step at its splice can be tested.
       *[other] This rail has { $have } positions. With three or more, the step at its splice can be tested.
    }
plan-reasons-gap = The nearest reading is { $gap } away: curvature or a step there would not be seen.
plan-add-row = Add this row
plan-add-to-plan = Add to the plan
plan-figures-title = What to expect
plan-figures-expected-name = expected uncertainty of v
plan-figures-expected-source = ISO/TS 28037:2010, clauses 9 and 10
plan-figures-expected-meaning = Calculated with the same fit as the results. It depends on positions and stated uncertainties, not on the measured values.
plan-figures-reading-name = part from independent readings
plan-figures-reading-source = ISO/TS 28037:2010, clauses 6 and 7
plan-figures-reading-meaning = Independent for each row: more rows and a longer range reduce it. The formula is that of identical rows without common components.
plan-figures-shared-name = part common to several rows
plan-figures-shared-meaning = From splices, scales, time bases and the beam, weighted as in this plan.
plan-figures-floor-name = lower limit, with unlimited repeats
plan-figures-floor-meaning = Correlated components do not average out. Better splices, scales or time bases lower this limit.
plan-figures-again-name = with one more row at each position
plan-figures-again-meaning = Each is a new row: move the carriage away and back.
plan-figures-rail-name = with one more rail like the last
plan-figures-rail-meaning = Assumes that its splice is as well known as the last one, and positions as on that rail.
plan-figures-faster-name = with a time base twice as fast
plan-figures-faster-meaning = Half the time per division, wherever the delay still fits on the screen.
plan-figures-achieved-name = achieved so far
plan-figures-achieved-meaning = From the readings so far, by the budget.
plan-figures-reach-name = largest distance for this pulse rate
plan-figures-reach-meaning = There the delay equals one pulse period. Beyond it, the next edge A comes before edge B.
plan-figures-step-name = smallest resolvable distance step
plan-figures-step-source = common practice
plan-figures-step-meaning = For smaller steps the delays differ by less than twice the standard uncertainty of their difference, at the fastest planned time base.
plan-faster-rows =
    { $rows ->
        [one] { $u } ({ $rows } row)
       *[other] { $u } ({ $rows } rows)
    }
plan-none-faster = no delay fits on the screen then
plan-rehearsal = Rehearsal
plan-rehearsal-hint = Practise the whole lab: a new notebook with this bench and plan, simulated with errors drawn from your stated uncertainties. The true values can be shown afterwards.
plan-rehearse = Rehearse
plan-rehearsal-of = Rehearsal: { $title }
plan-rehearsing = This is the rehearsal, a separate notebook. Its readings are simulated.
plan-show-truth = Show the true values
plan-stated = { $value } (stated: u = { $u })

## A block that was pasted

pasted-turned = The pasted numbers used the other decimal mark and were converted.
pasted-headed = The headings “{ $headings }” were left out.

## How a row was calculated

row-work-none = This row has no distance or delay yet.
row-work-distance = Along the beam, from the splitter. Its standard uncertainty combines that of the ruler reading and what the row shares with others: splices, scale of the ruler.
row-work-distance-source = d = o + s·(r − m): o is the position of mark m, s = ±1 the direction of the ruler (common practice). Common uncertainties: JCGM 100:2008, 5.2.2
row-work-traces = Measured on the recorded traces, timed as chosen under Delays.
row-work-picture = From the marks on the photo, after perspective correction by the grid corners.
row-work-picture-source = JCGM 100:2008, 5.2.2; the marks are under Delays
row-work-screen = Position of edge B minus edge A on the screen, mean of repeated readings, times the time base.
row-work-screen-source = Each edge is read to ±a: JCGM 100:2008, 4.3.7. Repeated readings: 4.2.3
row-work-typed = Entered directly.
row-work-typed-source = as typed
row-work-residual = normalized residual
row-work-residual-meaning = The residual e = Δt − (t₀ + b·d), divided by its own standard uncertainty, allowing for the row’s leverage. Where distances are uncertain too, or rows share uncertainty components, e is what remains after these are adjusted.
row-work-residual-source = W. Baarda, A Testing Procedure for Use in Geodetic Networks (1968); for independent rows, the studentized residual
row-pad-minus = Minus
row-pad-semicolon = Semicolon
row-pad-abc = abc
row-pad-letters = abc: letters, for a unit

## Delays

delays-title = Delays
delays-hint = Delays can be taken from photos or recorded traces instead of typing them.
fields-mark_uncertainty = Uncertainty of one mark on a photo
fields-trace_level = Fixed threshold above the baseline
fields-trace_fraction = Constant fraction of the amplitude
delays-from-picture = photo
delays-from-traces = traces
delays-jump-picture = Show the photo of row { $n }
delays-jump-traces = Show the traces of row { $n }

## Photos

pictures-title = Photos of the screen
pictures-hint = Add the photos of a whole run at once: choose them, drop them here, or paste one. A file name such as “1250 mm.jpg” gives the ruler reading. A video can be added too: its frames serve as photos. Each photo is scaled down and kept in this browser. Its metadata (place, time, device) is removed.
pictures-add = Add photos
pictures-columns = Divisions across the grid
pictures-rows = Divisions down the grid
pictures-progress = Adding photo { $n } of { $all }…
pictures-added =
    { $n ->
        [one] { $n } photo was added.
       *[other] { $n } photos were added.
    }
pictures-refused-title = Not added:
pictures-full = { $name }: the browser’s storage is full, so the photo was not added. Everything before it is kept. Download the bundle. Photos of permanently deleted notebooks are removed a day or more after they were added, when the page is opened.
pictures-twice = { $name } is already the photo of row { $n }: the same photo is not a second reading.
pictures-twice-chosen = { $name } was chosen twice and was added once.
pictures-replace = Row { $n } already has a delay from a file. Replace that file with { $name }?
pictures-other-reading = The name { $name } gives another reading than row { $n } has ({ $reading }). Use it there anyway?
pictures-use-it = Use it
pictures-choose = Photo
pictures-option = Row { $n }: { $name }
pictures-option-unmarked = Row { $n }: { $name } (to be marked)
pictures-left =
    { $all ->
        [one] { $marked } of { $all } photo is marked.
       *[other] { $marked } of { $all } photos are marked.
    }
pictures-loading = Looking for grid and edges…
pictures-missing = { $name } is not kept in this browser. Its marks are numbers, so the row is still valid. A bundle also holds the photo.
pictures-missing-marks = { $name } is not kept in this browser and has no marks yet. Open a bundle that holds it, or add it again.
pictures-broken = { $name }: the browser can’t show the photo it kept. Add it again.
pictures-picture = The photo, with its grid drawn over it
pictures-mark-group = Marks
pictures-proposed = These marks are suggestions. Check that the dashed grid lies on the screen grid, and that A and B are at half the height of their edges. Move what is wrong, then accept.
pictures-serves = This photo uses the corner marks of row { $n } (camera not moved).
pictures-moved = The camera has moved since row { $n }: separate corner marks are suggested for this photo.
pictures-unseen = The corner marks of row { $n } are used. They could not be checked, because no grid was found here: check that the dashed grid lies on the screen grid.
pictures-not-found = Nothing is suggested. { $why } Move each mark to its position.
pictures-no-edge = “{ $name }” was not found: move its mark onto the edge.
pictures-doubts-lines = In doubt: only part of the grid was seen.
pictures-doubts-border = In doubt: an outer line of the grid was not seen, or lines go on beyond it. Check the numbers of divisions.
pictures-doubts-cut = In doubt: the grid goes beyond the photo. State only the divisions that are whole in it, and mark the corners of that part.
pictures-doubts-turned = In doubt: the screen lies on its side. The first corner belongs to the upper left one of the screen, wherever that is in the photo.
pictures-doubts-edge = In doubt: an edge is not clear, or hidden by a reflection, or rests on its way to the top, or its trace is not level before it or shows another pulse.
pictures-doubts-meet = In doubt: both traces have the same colour and meet, so an edge may belong to the other trace.
pictures-doubts-order = In doubt: which edge is A’s. The photos do not show it for certain. If the marks are the wrong way round, exchange them.
pictures-doubted =
    { $n ->
        [one] One mark is in doubt. “Accept the marks” leads to it first: look at it through the magnifier, and move it if it is off.
       *[other] { $n } marks are in doubt. “Accept the marks” leads to each of them first: look at it through the magnifier, and move it if it is off.
    }
pictures-exchange = Exchange A and B
pictures-checks-moved =
    { $n ->
        [0] The checks of the lens were removed: no grid is seen where the corners put them.
       *[other] The checks of the lens moved with the corners. Those without a grid line there were removed.
    }
pictures-how = Drag a mark, or click where the selected one belongs. Arrow keys move it by one pixel, with Shift by a tenth, with Alt by ten; plus and minus zoom, as do the wheel and two fingers. Enter accepts.
pictures-closer = Zoom in on the photo
pictures-wider = Zoom out of the photo
pictures-whole = Whole photo
pictures-nudges-left = Left by one pixel
pictures-nudges-up = Up by one pixel
pictures-nudges-down = Down by one pixel
pictures-nudges-right = Right by one pixel
pictures-accept = Accept the marks
pictures-next = Next photo to mark
pictures-still-sought = Not accepted yet: move { $names } first.
pictures-grid-wrong = Not accepted yet. { $why }
pictures-accepted = Row { $n } is marked.
pictures-accepted-unused = Row { $n } is marked, but not included yet. { $lacks }
pictures-all-marked = All photos are marked.
pictures-again = { $name }, mark { $n }
pictures-mark-again = Mark “{ $name }” again
pictures-drop-mark = Remove the selected mark
pictures-move-first = Move the new mark to the edge: it counts after it was moved.
pictures-own-corners = Use separate corner marks
pictures-shared =
    { $n ->
        [one] Its corner marks are used for { $n } photo: moving one changes its row.
       *[other] Its corner marks are used for { $n } photos: moving one changes all those rows.
    }
pictures-take-off = Remove the photo from this row
pictures-taken-off = The photo was removed from row { $n }.
pictures-marks-a = Edge A
pictures-marks-b = Edge B
pictures-marks-corner = Corner
pictures-marks-check = Check
pictures-corners-upper-left = Upper left corner
pictures-corners-upper-right = Upper right corner
pictures-corners-lower-right = Lower right corner
pictures-corners-lower-left = Lower left corner
pictures-check = Grid crossing { $n }, a check of the lens
pictures-place = { $x } pixels across, { $y } down, { $state }
pictures-states-proposed = suggested
pictures-states-doubted = in doubt
pictures-states-looked = in doubt, now looked at
pictures-states-sought = not found
pictures-states-set = moved by hand
pictures-states-taken = accepted
pictures-ends-title = Baseline and top of the edges
pictures-ends-hint = Where pulses differ in height, run into each other or leave the screen, half height is a guess. Mark for each edge where the trace leaves its baseline and where it reaches its top, or state that one of them is off the screen. The level is then drawn: put the mark of the edge where the trace crosses it. How far the level may be off enters the uncertainty.
pictures-ends-mark = Mark baseline and top
pictures-ends-move = Move this mark to its position, or press “Off the screen”. Baseline and top count once all four are done.
pictures-ends-look = Check this mark: move it, press “The mark is right” (or Enter), or press “Off the screen”. Baseline and top count once all four are done.
pictures-ends-right = The mark is right
pictures-ends-off = Off the screen
pictures-ends-drop = Remove baseline and top
pictures-marks-a-baseline = Edge A: baseline
pictures-marks-a-top = Edge A: top
pictures-marks-b-baseline = Edge B: baseline
pictures-marks-b-top = Edge B: top
pictures-fraction = Level as a fraction of the height
pictures-thickness = Thickness of the trace / px
pictures-thickness-found = Measured on this photo: { $n } px. State another value if that is wrong.
pictures-fields-rail = Rail
pictures-fields-reading = Ruler reading
pictures-fields-time_base = Time per division
video-title = { $name }: find a frame in which the traces are sharp and complete, then use it.
video-place = Position in the video
video-at = { $time } s
video-earlier = Earlier
video-later = Later
video-use = Use this frame
video-done = Done with this video
video-broken = { $name }: the browser can’t show this video. Convert it to another format, or take a screenshot of the frame and add that.

## Traces

traces-title = Recorded traces
traces-hint = Add the trace files of a whole run at once: choose them or their folder, or drop them here. Both traces may be in one file, or in one file each. A file name such as “A 1250 mm ch1.csv” gives rail, ruler reading and trace.
traces-add = Add trace files
traces-add-folder = Add a folder of traces
traces-looking = Looking at the files…
traces-busy =
    { $n ->
        [one] Other files are still being read, so { $n } new file was not added. Add it again afterwards.
       *[other] Other files are still being read, so { $n } new files were not added. Add them again afterwards.
    }
traces-given =
    { $files ->
        [one] { $files } file with the traces of one position. Check that the columns are read correctly, then measure.
       *[other] { $pairs ->
            [one] { $files } files with the traces of { $pairs } position. Check that the columns are read correctly, then measure.
           *[other] { $files } files with the traces of { $pairs } positions. Check that the columns are read correctly, then measure.
        }
    }
traces-measure-all = Measure all
traces-forget = Discard these files
traces-again = Measure again
traces-again-hint = Use this after you have changed the threshold or the fraction.
traces-progress = Progress of the measurement
traces-done = { $done } of { $all } positions
traces-done-again = { $done } of { $all } again, with the common threshold
traces-measured =
    { $n ->
        [one] { $n } position was measured.
       *[other] { $n } positions were measured.
    }
traces-unchanged = Measured; nothing changed.
traces-stopped =
    { $n ->
        [one] Stopped. { $n } position was measured and added to the readings. It uses its own threshold until all are measured again.
       *[other] Stopped. { $n } positions were measured and added to the readings. Each uses its own threshold until all are measured again.
    }
traces-undo = “Undo” removes them all at once.
traces-refused-title = Not added:
traces-more = and { $n } more.
traces-of-file = { $name }: { $why }
traces-other = { $name }: not a trace file but a photo, a video or a notebook; it was not added.
traces-bad-wish = Nothing was measured: correct the threshold or the fraction first.
traces-needed = Row { $row }: { $name } is not kept in this browser. Add the file again to measure it again; until then the row keeps its delay.
traces-not-kept = { $name }: measured, but the file is not kept in this browser ({ $why }). To see or measure it again, add it again.
traces-many-too-large = { $n } files are over 8 MB: measured, but not kept in this browser. To see or measure them again, add them again.
traces-too-large-to-keep = it is over 8 MB
traces-layout-of = As read from { $name }. Corrections apply to all files.
traces-layout-delimiter = Column separator
traces-layout-delimiters-tab = tabs
traces-layout-delimiters-semicolon = semicolons
traces-layout-delimiters-comma = commas
traces-layout-delimiters-bar = vertical bars
traces-layout-delimiters-space = spaces
traces-layout-decimal = Decimal mark
traces-layout-decimals-point = point
traces-layout-decimals-comma = comma
traces-layout-first-line = First line of samples
traces-layout-step = Sampling interval / ns
traces-layout-table = Columns and first samples
traces-layout-column = Column
traces-layout-holds = Contains
traces-layout-unit = Unit
traces-layout-line = Line { $n }
traces-layout-roles-time = time
traces-layout-roles-channel_a = trace A
traces-layout-roles-channel_b = trace B
traces-layout-roles-ignored = ignore
traces-layout-unit-none = none
traces-layout-role-of = What column { $name } contains
traces-layout-unit-of = Unit of column { $name }
traces-layout-supposed = { $unit }, assumed
traces-layout-view = Both traces as these choices read them
traces-layout-settings = Other settings in the file
traces-estimator = How edges are timed
traces-estimators-constant_fraction = constant fraction: each edge at the same fraction of its own amplitude
traces-estimators-fixed_level = fixed threshold: both edges at the same voltage; subject to time walk: a smaller pulse crosses later
traces-estimators-edge_line = straight line through 10 % to 90 % of each edge, extended to its baseline
traces-estimators-cross_correlation = cross-correlation: the shift at which the edges are most alike
traces-estimators-shift_and_scale = least-squares shift and scale of one edge against the other
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
traces-missing = { $name } is not kept in this browser, so the traces can’t be shown. The measured delay is still valid. Add the file again to see it.
traces-take-off = Remove the traces from this row
traces-taken-off = The traces were removed from row { $n }.
traces-walk = Difference fixed threshold − constant fraction, against distance
traces-walk-summary = Difference fixed threshold − constant fraction at { $n } positions; it grows by { $slope } ns per metre.

## Remarks on a delay measured on traces

remarks-level-pair = Threshold: { $volts } V above the baselines, half of the smaller pulse.
remarks-level-run = Threshold: { $volts } V above the baselines, half of the smallest pulse of the run.
remarks-level-stated = Threshold: { $volts } V above the baselines, as stated.
remarks-fraction = Fraction: { $percent } %.
remarks-inverted = Trace { $trace }: the pulse is negative and was inverted.
remarks-noisy = Trace { $trace }: the amplitude is less than 5 times the noise.
remarks-double_edge = Trace { $trace }: a second edge stands near sample { $sample }.
remarks-unlike_edge = Trace { $trace }: its edge has another shape than that of the other trace: between 20 % and 80 % of the heights the delay differs by { $time } ns.
remarks-not_quiet = Trace { $trace }: a signal before the pulse disturbs the baseline at sample { $sample }.
remarks-drift = Trace { $trace }: the baseline drifts by { $volts } V before the pulse.
remarks-correlated_noise = Trace { $trace }: the noise is correlated over { $n ->
        [one] { $n } sample
       *[other] { $n } samples
    }; the uncertainty allows for it.
remarks-few_on_edge = Trace { $trace }: only about { $n ->
        [one] { $n } sample lies
       *[other] { $n } samples lie
    } on the edge; faster sampling would help.
remarks-flat_top = Trace { $trace }: the top is { $volts } V throughout. If that is the largest value the instrument can record, the pulse is clipped and its edge is read too early.
remarks-uneven_steps = Trace { $trace }: the samples were taken at unequal steps, which differ from the mean one by up to { $percent } %. They were carried to equal steps by their times; the uncertainty allows for it.
remarks-supposed_unit = Trace { $trace }: the file does not say in which unit its times are; it was assumed.
remarks-rough = Trace { $trace }: the uncertainty is more than a tenth of the rise time, so it is itself only roughly known.

## Files

files-other-notebook = Another notebook was opened meanwhile: nothing was added to it. Add the files again in the notebook they belong to.
only-here = This browser keeps no files, perhaps because the window is private: photos and traces last until the page is closed. Download the bundle (.zip) before that: it holds them.

## Notes between the rows

notes-title = Note
notes-add = Add a note
notes-hint = What happened at the bench: a cable was moved, the lamp changed, a door opened. It is kept with the date and time, stands between the rows, and goes into the report.
notes-text = Text of the note
notes-after = Position
notes-first = before the first row
notes-behind = after row { $n }
notes-write = Save note
notes-remove = Remove note
notes-cancel = Cancel
notes-change = Change
notes-change-of = Change the note: { $at }
notes-needed = Write something first.
notes-removed = The note was removed.
notes-other-notebook = Another notebook was opened meanwhile, and this note was not saved. Copy its text, and write it in the notebook it belongs to.

## Striking a row out

strike-hint = The row stays visible and can be restored. The reason goes into the notebook and the report.
strike-reason = Reason
strike-needed = State the reason first.
strike-cancel = Cancel

## Line

line-title = Line
charts-nothing = Once a row is complete and not struck out, delay against distance is drawn here, with the residuals below.
line-plot = Delay against distance
line-residuals = Residuals
line-figures = The line
line-checks = Checks
line-checks-hint = Other tests of the same rows. None of them changes the result.
line-method = { $how } The delay at zero distance, t₀, is fitted and never taken as zero.
line-method-ordinary = Ordinary least squares: no uncertainty is stated, so the uncertainties come from the scatter (JCGM 100:2008, H.3).
line-method-weighted = Weighted least squares with the stated uncertainties of the delays (ISO/TS 28037:2010, clause 6).
line-method-distances = Least squares with the stated uncertainties of the distances (ISO/TS 28037:2010, clause 7).
line-method-both = Least squares with stated uncertainties of distance and delay (ISO/TS 28037:2010, clause 7).
line-method-shared = Least squares with the stated uncertainties. Components common to several rows (splices, scales, time bases) and stated covariances are in the covariance matrix (ISO/TS 28037:2010, clauses 8 to 10).
line-summary = { $n } rows; distance from { $near } to { $far } m, delay from { $least } to { $most } ns. { $course } At zero distance the delay is { $intercept } ns.
line-rises = The line rises by { $slope } ns per metre.
line-falls = The line falls by { $slope } ns per metre.
line-no-residuals = There are no residuals: the line goes through every row.
line-residual-summary = { $within } of { $n } normalized residuals lie between −2 and 2; the largest is { $largest }, of row { $row }.

## Charts

chart-distance = distance d
chart-delay = delay Δt
chart-walk = fixed threshold − constant fraction
chart-walk-series = time walk
chart-residual = normalized residual
chart-bench-distance = distance from the splitter d
chart-speed = speed of light c
chart-density = probability density
chart-time = time
chart-voltage = voltage
chart-no-samples = No samples of either trace are in this range.
chart-no-readings = No row has both a distance and a delay yet.
chart-no-residuals = No residuals yet: they come with the fitted line.
chart-no-rails = No rail has a position yet: state that of the first one.
chart-no-budget = No budget yet: it comes with the result.
chart-no-trials = No trials yet, or all with the same result.
chart-threshold = level of the crossing
chart-trials = trials
chart-budget-curve = distribution from the budget
chart-ends = ends of the trials’ interval
chart-line = fitted line
chart-line-in-band = line, 95 % band
chart-bars = bars: ± 1 u
chart-two = ± 2
chart-carriage = carriage position
chart-grows = readings increase
chart-splice = splice
chart-splitter = splitter
chart-start = detector A
chart-source = source
chart-typed = entered directly
chart-step-fitted = step fitted
chart-row-beyond = row { $n }, beyond { $arrow }
chart-unplaced = position not known yet: { $names }
chart-rail = { $name }: { $note }
chart-from = from
chart-to = to
chart-ruler-from = ruler, from
chart-ruler-to = ruler, to
chart-carriages = carriage positions
chart-trace = trace
chart-baseline = baseline
chart-top = top
chart-crossing = crossing
chart-traces-span = Both traces from { $from } to { $to } ns.
chart-trace-none = Trace { $trace } shows no pulse.
chart-trace-levels = Trace { $trace }: baseline at { $baseline } V, top at { $top } V.
chart-trace-edge = Trace { $trace }: baseline at { $baseline } V, top at { $top } V; the edge crosses { $level } V at { $time }.

## Uncertainty

uncertainty-title = Uncertainty
fields-coverage = Coverage probability

## Budget

budget-caption = Uncertainty budget, the largest component first
budget-hint = Move a slider to see the uncertainty if that component were smaller or larger. It changes nothing in the notebook.
budget-columns-name = Component
budget-columns-acts_on = Acts on
budget-columns-u = u
budget-columns-shape = Distribution
budget-columns-degrees_of_freedom = ν
budget-columns-sensitivity = Sensitivity coefficient |⁠∂c/⁠∂x⁠|
budget-columns-contribution = Contribution to u(c)
budget-columns-share = Share of u²(c)
budget-columns-what_if = What if
budget-what-if-of = What if: { $name }
budget-answer = With this component { $factor }: { $changes }.
budget-answer-none = With this component { $factor }, no value changes.
budget-change = { $symbol } = { $value } instead of { $now }
budget-reset = Back to × 1
budget-rail = rail { $name }
budget-removed-rail = a removed rail
budget-names-splitter = position of the splitter mark, { $rail }
budget-names-splice = splice of { $rail }
budget-names-scale = scale of the ruler, { $rail }
budget-names-recorder = time base of the recorder
budget-names-time_base = time base at { $time } per division
budget-names-grid = corners of the grid on photos
budget-names-unnamed = unnamed component
budget-names-rulers = ruler readings
budget-names-distances = distances entered
budget-names-screen = edge readings on the screen
budget-names-repeats = scatter of repeated readings
budget-names-marks = marks of the edges on photos
budget-names-traces = noise of the traces
budget-names-walk = time walk at the fixed threshold
budget-names-delays = delays entered
budget-names-matrices = stated covariance matrices
budget-names-scatter = scatter about the line
budget-names-beam = angle of the beam
budget-names-air = refractive index of air
budget-names-skew = skew between the channels
budget-acts-beyond = distances on { $rail } and beyond
budget-acts-rail = distances on { $rail }
budget-acts-setting = delays at that setting
budget-acts-removed = nothing: it was removed
budget-acts-each_distance = each distance
budget-acts-each_delay = each delay
budget-acts-walk = delays from traces, in proportion to the distance
budget-acts-grid = delays read against that grid
budget-acts-both = distances and delays
budget-acts-slope = the slope
budget-acts-all_distances = all distances
budget-acts-c = c only
budget-acts-all_delays = all delays
budget-acts-stated = { $acts }, { $rows }: { $effect }
budget-rows-rail = rows on { $rail }
budget-rows-chosen =
    { $n ->
        [one] { $n } row
       *[other] { $n } rows
    }
budget-remarks-no_deviation = With two degrees of freedom or fewer this component has no finite standard deviation: the scale of its distribution is shown. Report the interval of the Monte Carlo check.
budget-remarks-skew = It shifts every delay by the same amount: only t₀ changes, not the slope.
budget-remarks-shift = It shifts every distance or every delay in the line by the same amount: only t₀ changes, not the slope.
budget-remarks-no_angle = No angle is stated.
budget-remarks-angle = At an angle θ the light’s path is shorter (wide beam) or longer (thin beam that is followed) than the distance read, by the fraction θ²/2. Half of the largest possible effect is corrected; the rest is taken as rectangular.
budget-remarks-air = The stated air is too near the end of the range of the equations: its uncertainty can’t be given.
budget-remarks-walk = A smaller pulse crosses a fixed threshold later, and nothing corrects for it: the slope of the difference from constant fraction, together with its own uncertainty, is taken as a standard uncertainty (Phillips, Eberhardt and Parry 1997). With constant fraction this component disappears.
budget-remarks-shared = Part of the fit’s covariance matrix, common to its rows: more rows do not reduce it.
budget-remarks-scatter = Taken from the residuals instead of stated uncertainties of the rows.
budget-remarks-matrices = Part of the fit’s covariance matrix, as stated.
budget-remarks-rows = Part of the fit’s covariance matrix, independent for each row: more rows reduce it.
budget-remarks-beside = Not part of the fit; added to the budget.
budget-summary = Largest component: { $name } ({ $share } of the variance). Combined: u(c) = { $u } m/s, { $percent } % of c.
budget-summary-bare = Combined: u(c) = { $u } m/s, { $percent } % of c.

## Monte Carlo check

trials-title = Monte Carlo check
trials-hint = A check of the budget: every input quantity is drawn at random from its distribution, many times, and the whole analysis is done for each draw. The same seed gives the same digits in every browser.
trials-wanted = Number of trials
trials-seed = Seed
trials-new-seed = New seed
trials-start = Run the check
trials-progress = Progress of the check
trials-running = Running…
trials-done = Done.
trials-stopped = Stopped. Results so far:
trials-changed = Stopped, because the notebook changed.
trials-stale = The notebook has changed since this run: the results below are for the earlier version.
trials-failed = The check could not be run: { $why }
trials-unsaid = the browser blocked the background calculation.
trials-here = Run it in the page itself (slower)
trials-plot = Results of the trials
trials-default = as many as needed for steady results, at most { $most }
trials-drawn = { $done } of at most { $most } trials
trials-interval = { $low } to { $high } m/s
trials-verdict-none = The budget gives no interval to compare with the trials. { $why }
trials-verdict-holds = The budget’s interval is validated: { $apart }. It may be reported.
trials-verdict-fails = The budget’s interval is not validated: { $apart }. Report the interval of the trials.
trials-verdict-undecided = There are too few trials to judge the budget’s interval: { $apart }, and each end of the trials’ interval is known only to { $u } m/s. Make more trials.
trials-apart = its ends differ by { $low } and { $high } m/s from those of the trials, and { $tolerance } m/s are allowed (JCGM 101:2008, 8.1)
trials-curve-normal = normal distribution
trials-curve-student = Student’s t distribution, ν = { $nu }
trials-summary = Histogram of { $trials } trials about { $mean }; over it the budget’s { $curve } about { $c }.

## What the page refuses of files

evidence-unsaid = the browser gives no reason
evidence-refusals-too_large = { $what }: this file is larger than 64 MB. Save the trace with fewer samples around the pulse, or the photo in a smaller size.
evidence-refusals-too_many = { $what } files are more than the limit of 2000 at once. Add them in parts, such as one folder for each rail.
evidence-refusals-file = { $what }: the file can no longer be read. It may have been moved, changed or deleted; choose it again.
evidence-refusals-decode = { $what }: this photo can’t be read to its end. It may be cut off or damaged; copy it from the camera again, or open it and save it again.
evidence-refusals-no_canvas = This browser can’t process photos in the background. Use a newer one.
evidence-refusals-start = Reading traces and photos could not be started ({ $what }). Check the connection, and try again.
evidence-refusals-crash = Reading the traces or photos failed ({ $what }). The notebook is unchanged. Try again, or use a smaller file.
evidence-refusals-stopped = Stopped.
evidence-refusals-nothing_kept = The traces are no longer loaded. Open the files again.

## Result

result-title = Result
result-in-figures = In figures
result-sentences = In words
result-copy = Copy
result-copied = Copied.
result-not-copied = The browser did not allow copying. Select the text and copy it by hand.
result-choice = Which uncertainty do you report?
result-bases-stated = from the stated uncertainties of the input quantities
result-bases-scatter = from the scatter of the residuals (common components stay as stated; reading limits too, where the scatter is smaller)
result-reason = Reason
result-from-stated = The speed of light in vacuum, from { $n } rows, is c = { $c }, with the standard uncertainty, in brackets, from the stated uncertainties of the input quantities.
result-from-scatter = The speed of light in vacuum, from { $n } rows, is c = { $c }, with the standard uncertainty, in brackets, from the scatter about the line.
result-from-both = The speed of light in vacuum, from { $n } rows, is c = { $c }, with the standard uncertainty, in brackets, from the scatter about the line and the stated components that it does not replace.
result-from-limits = The speed of light in vacuum, from { $n } rows, is c = { $c }, with the standard uncertainty, in brackets, from the stated uncertainties of the input quantities: the scatter is smaller, and takes the place of no reading limit.
result-expanded = With the expanded uncertainty U behind ±, c = { $c } (coverage factor k = { $k }, coverage probability { $p }).
result-no-expanded = No expanded uncertainty can be given.
result-below = The result is { $apart } u below the defined value, 299 792 458 m/s.
result-above = The result is { $apart } u above the defined value, 299 792 458 m/s.
result-within = The difference is within the expanded uncertainty.
result-outside = The difference is larger than the expanded uncertainty. An effect may be missing from the budget; see the notices and checks.
result-sealed = The result is sealed: v and c are changed by a hidden factor, by at most 8 %, until the seal is opened.
result-choice-more = The rows scatter more than their stated uncertainties allow. From the stated uncertainties u(c) = { $stated } m/s; from the scatter u(c) = { $scatter } m/s. Which one do you report, and why?
result-choice-less = The rows scatter less than expected from their stated uncertainties. From the stated uncertainties u(c) = { $stated } m/s; from the scatter, which shrinks no reading limit, u(c) = { $scatter } m/s. Which one do you report, and why?
result-choice-same = From the stated uncertainties u(c) = { $stated } m/s. The scatter is smaller, but it cannot replace the reading limits stated for the rows, so from the scatter u(c) is the same.
result-choice-fits = The scatter agrees with the stated uncertainties: from these u(c) = { $stated } m/s, from the scatter u(c) = { $scatter } m/s.

## Seal

seal-mark = sealed
seal-title = Seal the result
seal-hint = Until the seal is opened, every displayed v and c is changed by a hidden factor, by at most 8 %. The slope and the delay at zero distance are hidden in the same way. So the known value can’t influence which rows are kept and what is stated. A notebook can be sealed only once.
seal-put = Seal it now
seal-open = Open the seal…
seal-open-title = Open the seal?
seal-open-hint = From then on, v and c are shown without the hidden factor. This can’t be undone, and it is recorded in the history.
seal-open-sure = Open permanently
seal-keep = Keep it sealed

## Report

report-not-in-bundle =
    { $n ->
        [one] One photo is not kept in this browser: the bundle holds its marks only.
       *[other] { $n } photos are not kept in this browser: the bundle holds their marks only.
    }
report-not-kept = { $name }: the browser could not keep the file ({ $why }). Try again.
report-title = Report
fields-people = Names
fields-student_number = Student number
fields-group = Group
fields-date = Date
fields-least_rows = Smallest number of rows included
fields-place = Place
fields-aim = Aim
fields-method = Method
fields-discussion = Discussion
report-take = Export
report-open = Open the report
report-open-hint = In a new tab, to read, print or save as PDF.
report-language = Language of the report
sheets-title = As it will be printed
sheets-hint =
    { $n ->
        [one] { $n } page of A4. To read it, open the report.
       *[other] { $n } pages of A4, side by side. To read them, open the report.
    }
sheets-print = Print the report
report-blocked = The browser did not allow a new tab. The report was offered as a file instead.
report-latex = Download report in LaTeX
report-markdown = Download report in Markdown (.zip)
report-forms-hint = To continue writing: LaTeX as one file, Markdown with its plots in separate files.
report-bundle = Download bundle (.zip)
report-bundle-hint = The whole notebook with tables, plots and report. It can be opened again here.
report-tables = Readings table
report-format = Format
report-formats-csv = CSV
report-formats-latex = LaTeX
report-formats-markdown = Pipe table
report-copy-table = Copy the table
report-take-table = Download table
report-plots = Plots
report-plot = Plot
report-plot-format = File type
report-take-plot = Download plot
report-take-plot-as = Download plot ({ $format })
report-no-plot = There is nothing to draw yet: enter readings first.
report-no-trials = No trials were made of the notebook as it stands. Run the check, under Uncertainty, first.
report-no-traces = No traces are shown. Show the traces of a row, under Readings, first.
report-no-walk = There is no time walk to draw: it needs rows with traces.
report-drop = Drop here: notebook files are opened; photos and traces are added to rows.
report-opened = “{ $title }” is open.
report-not-opened = { $name } was not opened: { $why }

## The printed report

report-notices = Notices
report-no-notices = No notices.
report-history = History
report-entries =
    { $n ->
        [one] The history of this notebook holds { $n } entry, stored in notebook.json.
       *[other] The history of this notebook holds { $n } entries, stored in notebook.json.
    }
report-times = Entries from { $first } to { $last } (UTC).
report-version = Report made with Slope of Light, version { $version }.
report-digest = Digest of the whole history (SHA-256): { $digest }. After any later change of the history it is another.
report-default = { $text } (default)
report-limit = limit ±{ $a }, u = { $u }
report-limit-alone = limit ±{ $a }
report-standard = u = { $u }
report-value-limit = { $value }, default limit ±{ $a }, u = { $u }
report-value-standard = { $value }, u = { $u }
report-exact = { $u }, treated as exact
report-unusable = { $text } (can’t be used)
report-not-given = (not stated)
report-setting = Time base at { $base } per division
report-setting-uncertainty = relative { $u }
report-shared = { $acts }: { $effect }, { $u }
report-rail = Rail { $name }
report-ruler = Ruler
report-ruler-text = in { $unit }; readings { $sense } outwards
report-splice = Position, as stated
report-splices-at_splitter = mark { $mark } lies at the splitter
report-splices-at_distance = mark { $mark } is { $distance } from the splitter
report-splices-joined = mark { $mark } meets mark { $before } on the previous rail, with a gap of { $gap }
report-splices-overlap = positions read on both rulers: { $pairs }
report-splices-pair = { $here } where the previous rail reads { $before }
report-splices-no-pairs = positions read on both rulers: none yet
report-splices-free = the step at mark { $mark } is fitted with the line
report-stands = Position, calculated
report-step = Step between this rail and the others
report-step-none = { $step }, not significantly different from zero ({ $p })
report-step-found = { $step }, significantly different from zero ({ $p })
report-photo = { $name }, in the bundle as pictures/{ $file }….jpg
report-note = { $date }, { $time } UTC: { $text }
report-delays-typed =
    { $n ->
        [one] Row { $rows }: the delay was typed.
       *[other] Rows { $rows }: the delays were typed.
    }
report-delays-screen =
    { $n ->
        [one] Row { $rows }: the delay is (edge B − edge A) × time per division, with both edges read on the screen.
       *[other] Rows { $rows }: each delay is (edge B − edge A) × time per division, with both edges read on the screen.
    }
report-delays-photos =
    { $n ->
        [one] Row { $rows }: both edges were marked on a photo of the screen.
       *[other] Rows { $rows }: both edges were marked on photos of the screen.
    }
report-delays-heights =
    { $n ->
        [one] In row { $rows }, baseline and top were marked too, where they are on the screen: each edge is timed at { $percent } % of its own height.
       *[other] In rows { $rows }, baseline and top were marked too, where they are on the screen: each edge is timed at { $percent } % of its own height.
    }
report-delays-traces =
    { $n ->
        [one] Row { $rows }: the edges were timed on recorded traces ({ $how }).
       *[other] Rows { $rows }: the edges were timed on recorded traces ({ $how }).
    }
report-shares = Shares of the variance of c, from 1 %
report-reason = Reason given
report-notice-rows =
    { $n ->
        [one] Row { $rows }.
       *[other] Rows { $rows }.
    }

## Tables: titles, columns, figures of the line

columns-row = row
columns-row-meaning = Number of the row in the notebook, from 1.
columns-figures-name = quantity
columns-figures-symbol = symbol
columns-figures-value = value
columns-figures-meaning = meaning
columns-figures-source = method or source
columns-budget-component = component
columns-budget-component-meaning = Where this uncertainty comes from.
columns-budget-acts_on = acts on
columns-budget-acts_on-meaning = Which distances or delays it moves.
columns-budget-u = u
columns-budget-u-meaning = Its standard uncertainty, in the unit of the next column.
columns-budget-unit = unit
columns-budget-unit-meaning = Unit of the standard uncertainty; none for a ratio.
columns-budget-shape = distribution
columns-budget-shape-meaning = How it is distributed.
columns-budget-degrees_of_freedom = ν
columns-budget-degrees_of_freedom-meaning = Its degrees of freedom; INF for infinitely many.
columns-budget-sensitivity = sensitivity coefficient |∂c/∂x|
columns-budget-sensitivity-meaning = Change of c, in m/s, for one unit of it.
columns-budget-contribution = contribution to u(c)
columns-budget-contribution-meaning = The standard uncertainty of c that it causes.
columns-budget-share = share of u²(c)
columns-budget-share-meaning = Its share of the variance of c, from 0 to 1.
columns-budget-note = note
columns-budget-remark = remark
columns-budget-remark-meaning = How it came into the budget, or why it can’t matter.
columns-readings-rail = rail
columns-readings-rail-meaning = Name of the rail on which the position was read.
columns-readings-reading = reading
columns-readings-reading-meaning = Ruler reading as typed; a number without a unit is in the unit of the ruler.
columns-readings-ruler_unit = ruler unit
columns-readings-ruler_unit-meaning = Unit of the ruler of that rail.
columns-readings-time_per_division = time per division
columns-readings-time_per_division-meaning = Time per division of the screen, in nanoseconds.
columns-readings-edge_a = edge A
columns-readings-edge_a-meaning = Edge A on the screen, as typed; repeated readings are separated by semicolons.
columns-readings-edge_b = edge B
columns-readings-edge_b-meaning = Edge B on the screen, as typed; repeated readings are separated by semicolons.
columns-readings-distance_m = distance
columns-readings-delay_ns = delay
columns-readings-normalized_residual = normalized residual
columns-readings-state = state
columns-readings-state-meaning = Whether the row is included, struck out, or incomplete.
columns-readings-outside_because = why not included
columns-readings-outside_because-meaning = Why the row is struck out, or what it lacks.
columns-readings-remark = remark
columns-readings-remark-meaning = Remark as typed.
tables-line = The straight line
tables-checks = Checks
tables-budget = Uncertainty budget of c
columns-residuals-distance_m = distance
columns-residuals-distance_m-meaning = Distance of the carriage from the splitter along the rails.
columns-residuals-u_distance_m = standard uncertainty of the distance
columns-residuals-u_distance_m-meaning = Standard uncertainty of that distance, parts common to other rows included.
columns-residuals-delay_ns = delay
columns-residuals-delay_ns-meaning = Delay of edge B after edge A.
columns-residuals-u_delay_ns = standard uncertainty of the delay
columns-residuals-u_delay_ns-meaning = Standard uncertainty of that delay, parts common to other rows included.
columns-residuals-residual_ns = residual
columns-residuals-residual_ns-meaning = Delay minus the delay of the line at that distance. Empty while the result is sealed: it would give the slope away.
columns-residuals-normalized_residual = normalized residual
columns-residuals-normalized_residual-meaning = Residual divided by its standard uncertainty. Where distances are uncertain too, or rows share uncertainty components, what remains after these are adjusted (Baarda’s w).
columns-line-figure = identifier
columns-line-figure-meaning = Identifier of the quantity, the same in every notebook.
columns-line-name = name
columns-line-name-meaning = Name of the quantity in words.
columns-line-value = value
columns-line-value-meaning = Its value, in the unit that the last column names.
columns-line-standard_uncertainty = standard uncertainty
columns-line-standard_uncertainty-meaning = Its standard uncertainty, in the same unit; empty where it has none.
columns-line-unit = unit
columns-line-unit-meaning = Unit of value and uncertainty; empty for a pure number.
tables-residuals = Rows in the line and their residuals
tables-fit = The straight line: delay = intercept + slope × distance
figures-slope = slope
figures-intercept = delay at zero distance
figures-covariance = covariance of intercept and slope
figures-degrees_of_freedom = degrees of freedom
figures-chi_square = chi-squared
figures-p_value = p-value of χ²
figures-weights_degrees = degrees of freedom of the stated uncertainties, as χ² weighs them
figures-birge_ratio = Birge ratio
figures-squares = sum of squared residuals
figures-scatter = standard deviation of the delays about the line
figures-v = group velocity in air
figures-group_index = group index of air
figures-c = speed of light in vacuum
figures-coverage = coverage probability
figures-coverage_factor = coverage factor
figures-expanded = expanded uncertainty of c
figures-z = difference from c₀ in standard uncertainties
figures-e_n = difference from c₀ in expanded uncertainties
figures-relative_difference = relative difference from c₀

## Figures: what each means, and where it is laid down

figures-none = none
figures-line-source = Least squares: ISO/TS 28037:2010
figures-slope-meaning = The delay grows by this much per metre. The speed is the path factor divided by it. A common scale factor of all distances or of all delays changes it by the same fraction.
figures-intercept-meaning = From unequal path lengths, cables and detectors. An offset common to all distances or all delays changes this value, not the slope.
figures-covariance-value = { $covariance } ns²/m (correlation { $r })
figures-covariance-opposite = The estimates are correlated: if one is too large, the other tends to be too small.
figures-covariance-alike = The estimates are correlated: if one is too large, the other tends to be too large as well.
figures-degrees_of_freedom-meaning = Rows in the line minus fitted unknowns.
figures-chi_square-meaning = Sum of the squared residuals r, relative to their stated uncertainties (covariance matrix V). About as large as ν if those were stated well.
figures-chi_square-source = ISO/TS 28037:2010, 10.3
figures-p_value-meaning = Probability of a larger χ² by chance. Below { $low } the rows scatter more than stated, above { $high } less.
figures-p_value-source = ISO/TS 28037:2010, 6.3; upper tail of the chi-squared distribution with ν degrees of freedom
figures-p_value-few = Some uncertainties come from few repeats and are uncertain themselves, with ν₂ = { $below } degrees of freedom: χ²/ν is then compared with F, not χ² with the chi-squared distribution, which would find fault with too many sound measurements.
figures-p_value-few-source = upper tail of the F distribution with ν and ν₂ degrees of freedom (Draper and Smith 1998, 2.1); ν₂ by Satterthwaite 1946, each source with its share in ν
figures-birge_ratio-meaning = Ratio of the scatter to the stated uncertainties.
figures-scatter-meaning = No uncertainty is stated, so this scatter is taken as the standard uncertainty of each delay.
figures-through_zero = slope of a line forced through zero
figures-through_zero-meaning = For comparison only. It is right only if path lengths, cables and detectors are exactly equal; otherwise their difference enters the speed.
figures-through_zero-source = As for the line, with t₀ held at zero
figures-rail_alone = slope on rail { $rail } alone
figures-rail_alone-meaning = Splices do not affect it. If the rails agree with each other but not with the whole line, a splice is wrong.
figures-rail_alone-source = As for the line, with the rows of this rail
figures-too_few_rows = too few rows
figures-quadratic = quadratic term
figures-quadratic-meaning = Coefficient a₂ of d² when a quadratic term is added; zero for a straight line. The p-value is the probability of one as large by chance.
figures-quadratic-source-normal = As for the line, with a term in d²; p from the standard normal distribution, Z
figures-quadratic-source-few = As for the line, with a term in d²; p from Student’s t with ν₂ degrees of freedom, those of the stated uncertainties
figures-quadratic-source-student = As for the line, with a term in d²; p from Student’s t with the degrees of freedom left
figures-theil_sen = median slope (Theil–Sen)
figures-theil_sen-meaning = Median of the slopes of all pairs of rows: a few wrong rows hardly change it.
figures-theil_sen-left_out = Left out: of more than { $most } rows the pairs are too many.
figures-other_way = slope from the regression of distance on delay
figures-other_way-meaning = Ordinary least squares with distance and delay exchanged. It differs from the others only where the rows scatter widely.
figures-other_way-source = JCGM 100:2008, H.3, with distance and delay exchanged
figures-decisive_row = slope without row { $row }, which changes it most
figures-decisive_row-meaning = If one row decides the slope, check that row again.
figures-decisive_row-source = As for the line, with { $n ->
        [one] the other row
       *[other] the other { $n } rows
    }
figures-runs = runs test of the residuals
figures-runs-source = A. Wald and J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147
figures-runs-meaning = A run is a sequence of residuals of one sign, along the distance: r runs, with n₊ residuals above and n₋ below the line. The p-value is the probability of so few (or so many) runs by chance.
figures-suspects = rows that an outlier criterion points to
figures-suspects-chauvenet =
    { $n ->
        [one] Chauvenet: row { $rows }
       *[other] Chauvenet: rows { $rows }
    }
figures-suspects-peirce =
    { $n ->
        [one] Peirce: row { $rows }
       *[other] Peirce: rows { $rows }
    }
figures-suspects-both = Chauvenet: { $n ->
        [one] row { $rows }
       *[other] rows { $rows }
    }; Peirce: { $m ->
        [one] row { $others }
       *[other] rows { $others }
    }
figures-suspects-meaning = Advice only: a person strikes a row out, with a reason. Chauvenet’s criterion points at a row if, among N rows, fewer than ½ are expected with a residual r as large as its own; s is the scatter of the rows, however large the stated uncertainties are as a whole.
figures-suspects-source = W. Chauvenet, A Manual of Spherical and Practical Astronomy (1863); B. Peirce, Astron. J. 2 (1852) 161
figures-v-detector = The path factor f is 1: detector B is on the carriage.
figures-v-mirror = The path factor f is 2: a mirror on the carriage sends the light back.
figures-group_index-value = { $index } (adds { $percent } % to v; u = { $u })
figures-group_index-bare = { $index } (adds { $percent } % to v)
figures-group_index-meaning = A pulse travels at the group velocity, c divided by the group index. The group index follows from the phase index n and its change with the vacuum wavenumber σ.
figures-group_index-extrapolated = At this wavelength the small part of the water vapour is extrapolated.
figures-group_index-source = P. E. Ciddor, Appl. Opt. 35 (1996) 1566, differentiated
figures-c-meaning = The digits in brackets are the standard uncertainty in the last digits.
figures-c-source = Form and rounding: JCGM 100:2008, 7.2.2 and 7.2.6
figures-interval = the same with its expanded uncertainty
figures-coverage_factor-meaning = For a coverage probability of { $p }: the quantile of Student’s t for these degrees of freedom, or of the normal distribution where ν is ∞.
figures-expanded-meaning = Coverage interval c ± U for a coverage probability of { $p }.
figures-sealed = shown when the seal is opened
figures-c0-source = SI Brochure, 9th edition, 2.2
figures-z-meaning = The defined value is c₀ = 299 792 458 m/s, exactly.
figures-no_expanded = not available: no U
figures-e_n-meaning = U is taken for a coverage probability of 95 %, whatever is chosen for the result. Between −1 and 1, c differs from the defined value by less than this U.
figures-relative_difference-meaning = Compare it with the relative uncertainty: alone it says nothing about agreement.
figures-second_order = second-order term of 1/b
figures-second_order-meaning = 1/b is not a linear function of b: its expectation is larger by this fraction, here more than a hundredth of the uncertainty.
figures-second_order-source = JCGM 100:2008, 5.1.2, note
figures-combined = combined standard uncertainty of c
figures-combined-meaning = Root sum of squares of the contributions: the largest ones decide it.
figures-effective_degrees = effective degrees of freedom
figures-effective_degrees-meaning = How well the uncertainty itself is known; ∞ where no component was estimated from few readings.
figures-trials = number of trials
figures-trials-value = { $n } (seed { $seed })
figures-trials-steady = Drawn until mean, uncertainty and both ends of the interval were steady to two digits of the uncertainty.
figures-trials-unsteady = This is the largest number of trials. The values are not yet steady to two digits of the uncertainty.
figures-trials-asked = As many as you asked for, or until you stopped. The same seed gives the same digits.
figures-trials-source = JCGM 101:2008, 7.9.4; two standard deviations of the mean over the blocks of trials must be below δ
figures-trials_mean = mean of the trials
figures-trials_mean-meaning = With the standard deviation of the trials as its standard uncertainty.
figures-trials_mean-no_deviation = With two degrees of freedom or fewer no finite standard deviation exists: report an interval.
figures-trials_mean-source = JCGM 101:2008, 7.6; the mean c̄ of the results of the M trials
figures-trials_symmetric = probabilistically symmetric { $p } coverage interval
figures-trials_symmetric-meaning = As many trials lie below it as above it.
figures-trials_symmetric-source = JCGM 101:2008, 7.7.2; from the r-th to the (r + q)-th trial in order of size, q = p·M
figures-trials_shortest = shortest { $p } coverage interval
figures-trials_shortest-meaning = The shortest of all intervals with that share of the trials. It differs from the symmetric one where the distribution is asymmetric.
figures-trials_shortest-source = JCGM 101:2008, 7.7.3; the shortest from the r-th to the (r + q)-th trial over all r
figures-separation = from edge A to edge B
figures-separation-meaning = Position of edge B minus edge A along the time axis, after perspective correction by the grid corners. Multiplied by the time base it is the delay.
figures-separation-source = R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision (2004), chapter 4
figures-separation_uncertainty = its standard uncertainty
figures-separation_levels = Then from where the level of each edge is (u₄): marks of baseline and top, thickness of the trace, and how far from the level the edge was marked.
figures-separation_uncertainty-meaning = From the marks of the edges (u₁), the marks of the grid corners (u₂; common to every row read against that grid), and the distortion of the lens (u₃).
figures-traces-source = σ(t) = σ(V)/|dV/dt| at the crossing (common practice in nuclear timing)
figures-fixed_level = fixed threshold
figures-fixed_level-meaning = Where each edge crosses the same voltage above its baseline. A smaller pulse crosses later: time walk.
figures-constant_fraction = constant fraction
figures-constant_fraction-meaning = Where each edge crosses the same fraction of its own amplitude.
figures-edge_line = line through the edge
figures-edge_line-meaning = Where the line through 10 % to 90 % of each edge meets its baseline.
figures-cross_correlation = cross-correlation
figures-cross_correlation-meaning = The shift at which the two edges, each divided by its amplitude, are most alike; between samples by a parabola.
figures-shift_and_scale = least-squares shift and scale
figures-shift_and_scale-meaning = The shift and the scale factor with which one edge fits the other best.
figures-walk_slope = time walk per metre
figures-walk_slope-meaning = How much later a fixed threshold is crossed for each metre, because the light weakens on the way: the slope of t₁ − t₂ against distance, with the delay t₁ at a fixed threshold and t₂ at a constant fraction. From { $n } rows.
figures-walk_slope-source = Weighted line of the differences against distance: ISO/TS 28037:2010, clause 6
figures-walk_shift = effect of a fixed threshold on v
figures-walk_shift-meaning = Relative change of v if the edges were timed at a fixed threshold.
figures-walk_shift-source = v = f/b, with b + w in place of b
tables-states-empty = empty
tables-states-incomplete = incomplete
tables-states-used = included
tables-states-struck = struck out
tables-outside = { $state }: { $why }
tables-note = The files are in UTF-8 and begin with a byte order mark. An apostrophe is put before each text that starts like a formula or with an apostrophe, so that no spreadsheet runs it. The same is done after a semicolon, a tab or a line end inside a cell. Remove one apostrophe at each of these places to have the text as it was typed.

## Notices

notices-weights-grave = Serious
notices-weights-look = Check
notices-weights-know = Good to know
notices-lead = { $weight }.
notices-more = and { $n } more
notices-row = row { $n }
notices-in-row = { $weight }: { $text }
notices-signs = Signs of it:

## What the notebook notices by itself: what was noticed, and what to look at

notice-entry_replaced = What was typed in these fields can’t be used, and the result leaves it out: { $fields }.
notice-entry_replaced-look = Check the marked fields: each says what is expected there.
notice-vague_splice = The position of rail “{ $rail }” is uncertain by { $u }, more than a twentieth of its length of { $length }.
notice-vague_splice-look = Check the uncertainty typed for this position, and its unit: a number without a unit is in the unit of the ruler.
notice-rail_unplaced =
    { $n ->
        [one] Row { $rows } is not included: the position of its rail is not known.
       *[other] Rows { $rows } are not included: the position of their rail is not known.
    }
notice-rail_unplaced-look = Check the position of that rail under Apparatus, and of the rail before it.
notice-vague_reading = A reading on rail “{ $rail }” is uncertain by { $u }, more than a twentieth of its length.
notice-vague_reading-look = Check the uncertainty of a ruler reading stated for this rail, and its unit: a number without a unit is in the unit of the ruler.
notice-rehearsal = This notebook is a rehearsal: its readings come from a simulated bench, nothing was measured.
notice-rehearsal-look = The true values can be shown under Plan.
notice-off_the_rail =
    { $n ->
        [one] The reading of row { $rows } lies outside the span of its rail.
       *[other] The readings of rows { $rows } lie outside the spans of their rails.
    }
notice-off_the_rail-look = Check the number typed, its unit, the rail named, and the span stated for that rail.
notice-ruler_restarts = The ruler of rail “{ $rail }” seems to start again with no change of rail: from one row on, all distances are too small or too large by the same step.
notice-ruler_restarts-look = Check whether the carriage had passed onto the next rail, whose ruler has its own zero.
notice-edge_off_screen =
    { $n ->
        [one] An edge of row { $rows } lies off the screen, which is { $width } wide.
       *[other] Edges of rows { $rows } lie off the screen, which is { $width } wide.
    }
notice-edge_off_screen-look = Check the number typed, and the width of the screen stated under Apparatus.
notice-coarse_figures = The ruler readings of rows { $rows } are typed with fewer digits than their stated uncertainty.
notice-coarse_figures-look = If the ruler was read more finely than was written down, write { $finer }, not { $coarse }.
notice-pair = { $one } with { $other }
notice-disagreeing_places = Rows at the same position have delays that differ by more than four times their uncertainty: { $pairs }.
notice-disagreeing_places-look = Check whether the time base, the trigger or the rail changed between them.
notice-delay_falls =
    { $n ->
        [one] The delay falls at row { $rows } although the distance grows.
       *[other] The delay falls at rows { $rows } although the distance grows.
    }
notice-delay_falls-throughout = The delay falls while the distance grows, over the whole run.
notice-delay_falls-look = Check the direction of the scale, and whether edges A and B were swapped.
notice-delay_below_uncertainty =
    { $n ->
        [one] The delay of row { $rows } is smaller than its own uncertainty.
       *[other] The delays of rows { $rows } are smaller than their own uncertainties.
    }
notice-delay_below_uncertainty-look = Check whether a faster time base would spread the two edges farther apart.
notice-beyond_a_period =
    { $n ->
        [one] The delay of row { $rows } is longer than one pulse period, { $period } ns: a delay is known only up to whole periods.
       *[other] The delays of rows { $rows } are longer than one pulse period, { $period } ns: a delay is known only up to whole periods.
    }
notice-beyond_a_period-look = Check which edge of B belongs to which pulse of A, and the pulse rate stated under Apparatus.
notice-treated_as_exact = Treated as exact, with an uncertainty of 0: { $what }. An error there changes c by the same fraction, and the budget has no component for it.
notice-treated_as_exact-look = State the limit from the data sheet or the specification. Type 0 if it is negligible.
notice-treated_as_exact-time-base = the time base
notice-treated_as_exact-scale = the scale of rail { $rail }
notice-uncertainty_missing-delays = No row states an uncertainty of its delay. The delays are treated as exact, so u(c) is too small.
notice-uncertainty_missing-distances = No row states an uncertainty of its distance. The distances are treated as exact, so u(c) may be too small.
notice-uncertainty_missing-look = State it in each row. Type 0 if it is negligible.
notice-defaults_only = All uncertainties are still default values.
notice-defaults_only-look = State how well you could really read the ruler, the splices and the edges.
notice-walk = The delays are timed at a fixed threshold, and the pulses weaken along the rails: this time walk alone changes v by { $percent } %.
notice-walk-look = Time the edges at a constant fraction of their amplitude.
notice-walk_twice =
    { $n ->
        [one] The budget has a component for the walk of the fixed threshold, computed from the traces. The stated component “{ $names }” also acts on these delays: if it stands for the same walk, it counts twice.
       *[other] The budget has a component for the walk of the fixed threshold, computed from the traces. These stated components also act on these delays: { $names }. Any that stands for the same walk counts twice.
    }
notice-walk_twice-look = Remove the stated component if it stands for the walk: the computed one follows from the traces. Keep it if it stands for something else.
notice-second_pulse =
    { $n ->
        [one] The traces of row { $rows } show a second pulse. The first one was measured.
       *[other] The traces of rows { $rows } show a second pulse. The first one was measured.
    }
notice-second_pulse-look = Look at the traces: A and B must be edges of the same pulse, and an echo must not raise the top of one. Record a shorter time, or lower the pulse rate, so that each trace shows one pulse. Two detectors of different kinds can look so as well: their tops climb differently, and the delay hangs on that as much.
notice-unlike_edges =
    { $n ->
        [one] On the traces of row { $rows } the edges of A and B have different shapes, so the delay hangs on where on the edges it is taken.
       *[other] On the traces of rows { $rows } the edges of A and B have different shapes, so the delays hang on where on the edges they are taken.
    }
notice-unlike_edges-look = Look at the traces. In a few rows, an echo may run into one edge: find what reflects, and record again. In all rows alike, the detectors or their cables differ: that moves all delays by the same time, and so the intercept, but not c.
notice-signal_before =
    { $n ->
        [one] On the traces of row { $rows } a signal before the pulse disturbs the baseline.
       *[other] On the traces of rows { $rows } a signal before the pulse disturbs the baseline.
    }
notice-signal_before-look = Look at the traces: the edge is timed from this baseline. Find where the signal comes from, and record again.
notice-not_level =
    { $n ->
        [one] On the traces of row { $rows } the baseline before the pulse is not level: it drifts, or a slow hum is added to it.
       *[other] On the traces of rows { $rows } the baseline before the pulse is not level: it drifts, or a slow hum is added to it.
    }
notice-not_level-look = Look at the traces: the amplitude, and with it the edge, is taken from this baseline. Find what moves it, and record again.
notice-air_left_out = The uncertainty of c leaves out the air: its stated uncertainties reach beyond the range of the equations.
notice-air_left_out-look = Check the uncertainties typed with temperature, pressure and humidity of the air.
notice-few_on_edge =
    { $n ->
        [one] On the traces of row { $rows } fewer than three samples lie on an edge.
       *[other] On the traces of rows { $rows } fewer than three samples lie on an edge.
    }
notice-few_on_edge-look = Where the edge lies between two samples is not known well. Record with a shorter sampling interval.
notice-flat_top =
    { $n ->
        [one] On the traces of row { $rows } the top of a pulse is one and the same value throughout: the pulse may be clipped.
       *[other] On the traces of rows { $rows } the top of a pulse is one and the same value throughout: the pulses may be clipped.
    }
notice-flat_top-look = The edge of a clipped pulse is read too early. If that value is the largest the instrument can record, record again with a larger range.
notice-rough =
    { $n ->
        [one] On the traces of row { $rows } noise hides so much of an edge that the uncertainty of the delay is itself only roughly known.
       *[other] On the traces of rows { $rows } noise hides so much of an edge that the uncertainties of the delays are themselves only roughly known.
    }
notice-rough-look = Average more pulses. The straight line and cross-correlation bear less noise than the other ways to time edges.
notice-supposed_unit =
    { $n ->
        [one] The trace files of row { $rows } do not say in which unit their times are: it was assumed.
       *[other] The trace files of rows { $rows } do not say in which unit their times are: it was assumed.
    }
notice-supposed_unit-look = Check the delays of these rows. Add the files again, and choose the unit or type the sampling interval where their columns are shown, also if it is as assumed.
notice-uneven_steps =
    { $n ->
        [one] The traces of row { $rows } were sampled at unequal steps. Their samples were carried to equal steps by the times in the file.
       *[other] The traces of rows { $rows } were sampled at unequal steps. Their samples were carried to equal steps by the times in the files.
    }
notice-uneven_steps-look = The remarks beside the traces say by how much the steps differ. If your recorder samples at equal steps, check the column of times.
notice-height_unknown =
    { $n ->
        [one] In row { $rows }, baseline or top of an edge is off the screen, so its half height is a guess.
       *[other] In rows { $rows }, baseline or top of an edge is off the screen, so its half height is a guess.
    }
notice-height_unknown-look = Take the photo again with both pulses whole on the screen. If that is not possible, state a larger uncertainty of the marks.
notice-grid_bent = A check of the lens is { $off } div from where the corner marks put it: a mark is wrong, or the lens distorts the photo. It enters the uncertainty of every row read against that grid.
notice-grid_bent-look = Check the corner marks. If they are right, take the photo from farther away.
notice-few_rows =
    { $n ->
        [one] Only { $n } row is included: too few to test linearity.
       *[other] Only { $n } rows are included: too few to test linearity.
    }
notice-few_rows-look = Take more positions; at least three on each side of a splice.
notice-not_diagnosed = { $n } rows are included, and for some of them a covariance matrix is stated. Among so many, mistakes in rows, rails and time bases were not searched for.
notice-not_diagnosed-look = Check the residuals and the other checks of the line yourself.
notice-scatter_too_large =
    { $nu ->
        [one] The rows scatter more than their stated uncertainties allow (χ² = { $chi } with { $nu } degree of freedom).
       *[other] The rows scatter more than their stated uncertainties allow (χ² = { $chi } with { $nu } degrees of freedom).
    }
notice-scatter_too_large-look = Check for a row that went wrong, a step at a splice, or uncertainties that were stated too small. Choose under Result which uncertainty you report, and say why.
notice-scatter_too_small =
    { $nu ->
        [one] The rows scatter less than expected from their stated uncertainties (χ² = { $chi } with { $nu } degree of freedom): these uncertainties may be stated too large.
       *[other] The rows scatter less than expected from their stated uncertainties (χ² = { $chi } with { $nu } degrees of freedom): these uncertainties may be stated too large.
    }
notice-scatter_too_small-look = Check first the uncertainty of one edge reading and of a ruler reading.
notice-step_at_splice = The readings show a step of { $step } mm (standard uncertainty { $u } mm) between rail “{ $rail }”, with those joined after it, and the other rails.
notice-step_at_splice-look = Check the marks, the gap and the direction of the scale written for the position of that rail.
notice-time_base_off = The rows read at { $base } ns per division are offset from the other rows by { $offset } ns (standard uncertainty { $u } ns).
notice-time_base_off-recorder = The rows timed by the recorder are offset from the other rows by { $offset } ns (standard uncertainty { $u } ns).
notice-time_base_off-look = Check that the right time base is written in each of these rows.
notice-curvature = The rows follow a curve rather than a straight line.
notice-curvature-look = Check for edges read at different heights as the light grows weaker, or a time base that is not linear across the screen.
notice-runs = The signs of the residuals are not random (runs test).
notice-runs-look = Look in the residual plot for a wave, a step at a splice, or a change between two parts of the run.
notice-decisive_row = One row decides the slope: without row { $row } its standard uncertainty would be { $times } times as large.
notice-decisive_row-look = Check that row, and whether more positions near it can be read.
notice-faster_than_light = The result exceeds the defined c by { $percent } %, which is { $times } u.
notice-faster_than_light-look = Check the path factor (detector or mirror on the carriage), the time base, and each splice.
notice-short_span = The whole run spans only { $times } times the uncertainty of one delay.
notice-short_span-look = Check whether the carriage can go farther, or whether a faster time base can be used.
notice-vague_result = The standard uncertainty is { $percent } % of c: too large for a useful result.
notice-vague_result-look = Check the first lines of the budget, and the unit of each number typed there.
notice-dominant_component = One component common to several rows is { $percent } % of u²(c); more readings do not reduce it.
notice-dominant_component-look = Check the first line of the budget: that component alone decides the uncertainty.
notice-row_off = Row { $rows } lies far off the line of all the others.
notice-row_off-look = Compare the reading, the rail, the time base and both edges of that row with your notes.
notice-forced_zero = A row states zero distance and zero delay. This is not a measurement: the delay at zero distance is what the line finds.
notice-forced_zero-look = Strike the row out unless it was read like the others.
notice-rows_exchanged = Rows { $rows } look exchanged: with each other’s delays both lie on the line.
notice-copied_rows = Rows at different positions have the same edges, to the last digit.
notice-copied_rows-look = Check whether they were copied down by mistake: read those positions again.
notice-edges_swapped = Edges A and B of row { $rows } look swapped: with the opposite sign of its delay it lies on the line.
notice-edges_swapped-all = Edges A and B look swapped in all rows: the delays have the wrong sign.
notice-slipped_decimal = In row { $rows } the decimal mark or a unit looks wrong: with a factor of ten the row lies on the line.
notice-time_base_slip = The time base that was used looks different from the one written down.
notice-wrong_rail = The reading of row { $rows } fits on another rail than the one named.
notice-beyond_a_period-told = With a delay one pulse period shorter or longer, each would lie on the line of the other rows.
notice-change_from_row = From one row on all delays are offset: something was changed between two rows.
notice-drift = The delays drift with the order in which the rows were taken.
notice-drift-look = Check whether the laser, the detectors or the trigger had warmed up: read some positions again, in another order.
notice-ruler_scale = On rail “{ $rail }” distances grow at another rate than on the others: its ruler or its unit does not fit.
notice-ruler_scale-look = Check the ruler of that rail against another one, and the unit written for it.
notice-wrong_sense = With the scale of rail “{ $rail }” counted in the other direction the rows lie on one line.
notice-wrong_sense-all = With all scales counted in the other direction the rows lie on one line.
notice-overlap_turned = With the two columns of the splice of rail “{ $rail }” exchanged the rows lie on one line.
notice-rail_unit = With the readings of rail “{ $rail }” in another unit the rows lie on one line.
notice-time_base_off-some = The rows read at one time base do not lie on the line of the others.
notice-mended =
    { $cause ->
        [row_off] { $what } Without that row, c would be { $c } × 10⁸ m/s.
        [forced_zero] { $what } Without that row, c would be { $c } × 10⁸ m/s.
        [rows_exchanged] { $what } With the two put back, c would be { $c } × 10⁸ m/s.
        [ruler_restarts] { $what } With that part of the ruler counted from its own zero, c would be { $c } × 10⁸ m/s.
       *[other] { $what } With that corrected, c would be { $c } × 10⁸ m/s.
    }
notice-path_factor = The result is a factor of two off the defined c, as it is when a mirror is taken for a detector or a detector for a mirror.
notice-path_factor-look = Check what is on the carriage, under Apparatus.
notice-scale_off = The result is { $percent } % below the defined c, which is { $times } u.
notice-edges_rounded = All edges are multiples of { $step } divisions, but their stated uncertainty corresponds to reading within ±{ $limit } divisions.
notice-edges_rounded-look = Check the uncertainty of one edge reading. If edges are rounded to marks, its limit is at least half of the distance between two marks.
notice-fine_figures = Ruler readings are typed with far more digits than could be read.
notice-fine_figures-look = Write as many digits as the ruler shows. An average may have one or two more.
notice-dominant_component-readings = The readings themselves are { $percent } % of u²(c).

## What a notice offers to mend a mistake: one edit, which “Undo” takes back

repair-strike = Strike out row { $rows } for this reason
repair-edges = Exchange edges A and B of row { $rows }
repair-edges-all = Exchange edges A and B of all rows
repair-exchanged = Exchange the positions of rows { $rows }
repair-sense = Reverse the direction of the scale of rail “{ $rail }”
repair-sense-all = Reverse the directions of all scales
repair-joint = Exchange the readings of the splice of rail “{ $rail }”
repair-path-mirror = State a mirror on the carriage
repair-path-detector = State a detector on the carriage
repair-constant_fraction = Time all edges at a constant fraction
repair-fitted = Fit the position of rail “{ $rail }” with the line
repair-next-rail =
    { $n ->
        [one] Put row { $rows } on rail “{ $rail }”
       *[other] Put rows { $rows } on rail “{ $rail }”
    }
repair-new-rail =
    { $n ->
        [one] Put row { $rows } on a new rail, with its position fitted
       *[other] Put rows { $rows } on a new rail, with its position fitted
    }

## The class

class-title = Class
class-hint = Read the notebooks of a class: bundles, notebook.json files, folders, or a zip of many. Drop them here, or choose them. Each result is recalculated here from the readings. Nothing leaves this machine, and your own notebooks stay as they are.
class-choose = Choose files
class-choose-folder = Choose a folder
class-clear = Clear the table
class-clear-lost =
    { $n ->
        [one] Not cleared: what you wrote on { $n } notebook is in no file yet, and would be lost. Download the comments first.
       *[other] Not cleared: what you wrote on { $n } notebooks is in no file yet, and would be lost. Download the comments first.
    }
class-clear-anyway = Clear anyway
class-progress = Progress of reading
class-running = { $done } of { $all } files read
class-done =
    { $n ->
        [one] { $n } file read.
       *[other] { $n } files read.
    }
class-stopped = Stopped. { $done } of { $all } files were read.
class-failed = Reading stopped ({ $why }). What was read before is in the table. Try again; if that does not help, reload the page.
class-passed-over =
    { $n ->
        [one] { $n } other file does not have the name of a notebook file and was not read.
       *[other] { $n } other files do not have the names of notebook files and were not read.
    }
class-no_notebook = There is no notebook in this zip. Choose a bundle as it was downloaded, or a zip of such bundles.
class-teachers = A key or comments in one zip with notebooks are not read: a student could have put them there. If they are yours, unpack the zip and choose them by themselves.
class-deep = This zip is inside a zip that is inside another one. Unpack the outer one first.
class-twice = The same notebook as { $path }, which counts once.
class-crashed = The calculation of this notebook ended unexpectedly. Open it by itself to see more.
class-incomplete =
    { $n ->
        [one] { $n } incomplete row
       *[other] { $n } incomplete rows
    }
class-take-table = Download the table (CSV)
class-search = Search the names
class-filter = Show
class-filters-all = all
class-filters-marked = with something to check
class-filters-without = without a result
class-filters-notice = with the notice chosen
class-shown = { $shown } of { $all } in the table
class-empty = No notebook was read yet.
class-table = Notebooks of the class
class-open-of = Open { $name }
class-open-hint = “Open” shows a notebook as it was handed in, read-only. It is not added to your own notebooks, unless you open a copy there.
class-reading-hint = Read-only: made here from the file that was handed in, and stored nowhere. What you write stands beside it.
class-reading-copy = Open a copy among my notebooks
class-reading-close = Back to the class
class-comment = Comment
class-comment-on = Comment on: { $place }
class-comments =
    { $n ->
        [one] { $n } comment
       *[other] { $n } comments
    }
class-general = Comment on the whole
class-mark = Grade
class-feedback = Comments and grades
class-feedback-hint = “Open” a notebook to write beside its sections, rows and answers. What you write lasts as long as this page is open: download it before you close the page. To go on another day, choose these files here again, together with the notebooks, and say which name is yours. Files of a colleague, chosen here too, stand beside yours, to be read. Students open their file like a notebook.
class-feedback-from = Your name, as students see it
class-feedback-mine = I am { $from }
class-feedback-mine-unnamed = What bears no name is mine
class-feedback-nameless = somebody who gives no name
class-feedback-whose = Only shown, under another name than yours: comments by { $names }. If one of these is you, press it under “Comments and grades” to go on with its comments, where you have written none yet.
class-feedback-renamed =
    { $n ->
        [one] What you wrote on one notebook bears the name { $from } now.
       *[other] What you wrote on { $n } notebooks bears the name { $from } now.
    }
class-feedback-doubtful =
    { $n ->
        [one] On one notebook several say something without a name: none was taken as yours. Clear the table, and choose your own files alone with the notebooks.
       *[other] On { $n } notebooks several say something without a name: none was taken as yours. Clear the table, and choose your own files alone with the notebooks.
    }
class-feedback-take = Download all comments (zip)
class-feedback-take-one = Download these comments
class-feedback-file = comments
class-colleague = A colleague
class-said-by = { $from }: { $brief }
class-feedback-state =
    { $unsaved ->
        [0] Notebooks with comments or a grade: { $n }. All are downloaded.
       *[other] Notebooks with comments or a grade: { $n }. Not downloaded yet: { $unsaved }.
    }
class-feedback-read =
    { $astray ->
        [0] Files with comments: { $n }.
       *[other] Files with comments: { $n }, of which { $astray } fit no notebook in the table, or one on which you have written already.
    }
class-columns-who = Notebook
class-columns-file = File
class-columns-title = Title
class-columns-people = Names
class-columns-rows = Rows
class-columns-struck = Struck out
class-columns-c = c
class-columns-u = u(c)
class-columns-expanded = U
class-columns-z = z, from c₀
class-columns-apart = z, from the median
class-columns-chi_square = χ²/ν
class-columns-degrees_of_freedom = ν
class-columns-p_value = p
class-columns-method = Method
class-columns-notices = Notices
class-columns-missing = Missing
class-columns-remarks = Remarks
class-columns-refusal = Not read
class-sort = Sort by { $column }
class-struck = { $used }, { $struck } struck out
class-methods-ordinary = least squares
class-methods-weighted = weighted
class-methods-both = both uncertainties
class-methods-shared = common components
class-after-seal =
    { $n ->
        [one] { $n } change after the seal was opened
       *[other] { $n } changes after the seal was opened
    }
class-differs = Stored values differ from those calculated here: { $figures }
class-scattered = u and U are claimed from the scatter of the residuals
class-coverage = U has another coverage probability than 95 %: { $coverage }
class-handed_otherwise = What was handed out is missing here, or is not the same as in most of these notebooks: another hand-out, or a changed file?
class-alike = Same readings in { $rows } rows as { $names }: worked together?
class-alike-merged = Same readings in { $rows } rows as { $names }: their notebooks were merged, as the history says.
class-columns-key = Key
class-key-both = c and t₀ covered
class-key-c = c covered, t₀ not
class-key-t0 = t₀ covered, c not
class-key-neither = neither c nor t₀ covered
class-key-none = not in the key
class-key-read =
    { $n ->
        [one] The key of “{ $title }” with its data set was read. The column Key says whether c ± U covers c₀, and whether t₀ ± k·u, with the same k, covers the true t₀.
       *[other] The key of “{ $title }” with its { $n } data sets was read. The column Key says whether c ± U covers c₀, and whether t₀ ± k·u, with the same k, covers the true t₀. With k = 2, one sound interval in twenty does not cover the true value.
    }
key-damaged = The key “{ $name }” is damaged. Download it again, or take the copy that you kept.
key-later = The key “{ $name }” was made by a later version of this page. Read it with that version.
class-too_few =
    { $n ->
        [0] No result yet. Two are needed to compare.
       *[other] Only { $n } result. Two are needed to compare.
    }
class-out_of_range = The results are too large, or their uncertainties too small, to calculate with. Look for a wrong unit.
class-together = All results together
class-nothing = Choose files first. Then all results are drawn here in order, each with its expanded uncertainty, together with their mean and how well they agree.
class-plot = All results in order, each with its expanded uncertainty
class-summary =
    { $n ->
        [one] { $n } result in 10⁶ m/s.
       *[other] { $n } results in 10⁶ m/s, from the smallest c to the largest. The band is the mean of the class ± 2 u.
    }
class-weighted = weighted mean
class-weighted-meaning = The mean of all results, each weighted by 1/u². Its uncertainty follows from the stated uncertainties alone. Results with a very small u dominate it.
class-chi_square = agreement of the results
class-chi_square-value = { $chi } with ν = { $nu }, { $p }
class-chi_square-meaning = χ² of the results about their weighted mean. A small p says that they scatter more than their uncertainties allow: some of them leave out an effect.
class-mandel_paule = mean, with scatter between notebooks (Paule–Mandel)
class-mandel_paule-meaning = τ is the scatter between notebooks that the stated uncertainties leave unexplained. It is chosen so that χ², calculated with it, equals ν. The plot uses this mean. A few results far off pull it.
class-dersimonian_laird = mean, with scatter between notebooks (DerSimonian–Laird)
class-dersimonian_laird-meaning = The same with τ from the moments of the results, in one step.
class-median = median
class-median-meaning = Half of the results lie above it, half below. A few results far off do not pull it, so the column “z, from the median” tells which those are: it is each result’s distance from the median, divided by the result’s own u(c).
class-between = { $mean }; τ = { $between }
class-none_between = { $mean }; τ = 0
class-residuals = Residuals of all notebooks, by position
class-residuals-unit = Residual in
class-residuals-units-normalized = standard uncertainties
class-residuals-units-nanoseconds = nanoseconds
class-residuals-drawn =
    { $rows ->
        [one] { $rows } row
       *[other] { $rows } rows
    } of { $n ->
        [one] { $n } notebook
       *[other] { $n } notebooks
    }, by distance from the splitter in metres, with the rails below. A dot is a row, above or below the line of its own notebook; a bar is the median at one position, a centimetre of a rail. Rows that are struck out or incomplete are left out.
class-residuals-shared =
    { $n ->
        [one] { $n } notebook shares readings with one before it: it is drawn, and does not count again where positions are judged.
       *[other] { $n } notebooks share readings with one before them: they are drawn, and do not count again where positions are judged.
    }
class-residuals-without =
    { $n ->
        [one] { $n } notebook without a line is left out.
       *[other] { $n } notebooks without a line are left out.
    }
class-residuals-unread =
    { $n ->
        [one] { $n } row is left out: its reading is not a plain number, or it has no residual.
       *[other] { $n } rows are left out: their readings are not plain numbers, or they have no residual.
    }
class-residuals-sealed =
    { $n ->
        [one] { $n } result is sealed: its rows are drawn in standard uncertainties only.
       *[other] { $n } results are sealed: their rows are drawn in standard uncertainties only.
    }
class-residuals-beyond =
    { $n ->
        [one] { $n } dot beyond the scale is drawn at its edge.
       *[other] { $n } dots beyond the scale are drawn at its edge.
    }
class-residuals-position = position
class-residuals-rows = rows
class-residuals-smallest = smallest normalized residual
class-residuals-median = median normalized residual
class-residuals-largest = largest normalized residual
class-residuals-median-time = median residual
class-places-none-shared = No two notebooks with readings of their own have a row at the same position, so positions can’t be compared.
class-places-none = No position stands out: nowhere are the rows of the notebooks off their lines together by more than chance.
class-places-some =
    { $n ->
        [one] At one position the rows of the notebooks are off their lines together, by more than chance. Check the ruler and the splice there: each notebook by itself may look sound.
       *[other] At { $n } positions the rows of the notebooks are off their lines together, by more than chance. Check the rulers and splices there: each notebook by itself may look sound.
    }
class-places-rule = The clearest position comes first. Each further one is judged on lines fitted without those before it. If all notebooks have readings of their own and nothing is wrong, a position is named in at most about one class in a hundred.
class-places-rail = rail { $rail } at { $mark }
class-places-distance = distance { $mark }
class-places-ns = { $ns } ns ({ $u } u)
class-places-u = { $u } u
class-places-above = { $place }: the delay lies above the line in { $together } of { $n } notebooks; the median is { $by }.
class-places-below = { $place }: the delay lies below the line in { $together } of { $n } notebooks; the median is { $by }.
class-lost = Where the uncertainty of the class comes from
class-lost-hint =
    { $n ->
        [one] The components of { $n } budget, by their share of u²(c).
       *[other] The components of { $n } budgets, by the median of their share of u²(c): half of the budgets have a larger share, half a smaller one. Medians need not add up to 100 %.
    }
class-lost-component = Component
class-lost-share = Share, median
class-lost-largest = Largest in
class-standing = Unresolved notices
class-standing-hint = What the page noticed and nobody resolved before handing in. The wording is that of the first notebook that has the notice.
class-standing-none = These notebooks have no such notice.
class-standing-count = { $n } of { $all }:
class-standing-where = In which notebooks
class-standing-in = { $name }: { $notice }
class-standing-show = Show in the table
class-standing-show-of = Show in the table: { $notice }

## Notebooks

notebooks-file = Open a file
notebooks-file-hint = A file that you were given, or a bundle downloaded here, becomes a new notebook. You can also drop it anywhere on the page.
notebooks-blank = New blank notebook
notebooks-demo = New from the demo
notebooks-demo-sets-photographs = Demo with photos
notebooks-demo-sets-traces = Demo with traces
notebooks-no-demo = The demo could not be loaded.
notebooks-open = Open
notebooks-current = open now
notebooks-rename = Rename
notebooks-new-name = New title
notebooks-keep-name = Save this title
notebooks-duplicate = Duplicate
notebooks-copy-of = { $title } (copy)
notebooks-delete = Delete
notebooks-deleted = “{ $title }” was deleted.
notebooks-bin = Deleted notebooks
notebooks-put-back = Put back
notebooks-forget = Delete permanently
notebooks-forget-sure = Press again to delete permanently
notebooks-busy = That notebook is open for writing in another window. Close it there first.
notebooks-nothing-kept = This browser blocks storage: these notebooks last until you close the page.
notebooks-action = { $action }: { $title }

## Settings

preferences-theme = Appearance
preferences-themes-auto = same as the system
preferences-themes-light = light
preferences-themes-dark = dark
preferences-contrast = Contrast
preferences-contrasts-auto = as the system asks
preferences-contrasts-more = more contrast
preferences-language = Language
preferences-language-not-kept = This browser blocks storage: the language can’t be changed here without losing the notebooks. Choose it in the settings of the browser.
preferences-mark = Decimal mark in this notebook
preferences-mark-hint = Numbers stay as they are typed: choose the mark before the first reading.
preferences-marks-point = point: 1.5
preferences-marks-comma = comma: 1,5

## The tour of the demo

tour = Tour of the demo
tour-offer = The speed of light, measured along three rails: an example with invented readings. Try anything, Undo takes it back.
tour-start = Take the tour (2 minutes)
tour-dismiss = Not now
tour-place = Tour, step { $n } of { $all }
tour-back = Back
tour-next = Next
tour-done = End the tour
tour-leave = Leave the tour
tour-apparatus = Three rails lie in line, from the splitter outwards. Each ruler has its own zero. What is stated of each rail’s position says where it lies, and how well that is known.
tour-readings = One row for each position: the ruler, the time base, and both edges on the screen. Distance d and delay Δt follow at once. One row is struck out: it stays visible, with its reason.
tour-line = Each row is a point. The slope of the line is the delay per metre; from it follows the speed of light. The line need not go through zero.
tour-residuals = The residuals are the differences between the rows and the line. Without a pattern, and most of them between −2 and 2, they say that the line fits.
tour-budget = What makes c uncertain, the largest component first. More rows reduce what is independent in each row. They do not reduce the uncertainty of a splice, which moves all rows beyond it. Move a slider to see what an improvement would bring.
tour-result = The result with its uncertainty, rounded, and in sentences that you can copy.
tour-report = Print the report, or hand in the bundle: it holds the whole notebook with every change.
tour-end = Now change a reading in this table, and watch how c changes. To begin your own notebook: Notebooks, New blank notebook.

## How a section is filled in

how = How
how-of = How: { $section }
how-more = More in the help.
how-glossary = Glossary
how-glossary-of = Glossary: { $term }
how-apparatus = Say what the carriage holds. Then describe each rail: its unit, its first and last mark, how well its ruler can be read, and where it lies. For the first rail that is the reading at the splitter, for each further rail the splice. Compare the drawing with the real bench. Fields left empty use the default shown in grey.
how-plan = Choose positions before you measure. Spread them over the whole length, with at least three on each side of a splice. The expected uncertainty follows at once. A rehearsal is a practice notebook with simulated readings.
how-readings = Type one row for each position: the rail, what its ruler reads, the time base, and both edges in divisions of the screen. Read both edges at half of their own heights. Repeated readings of an edge go in one cell, separated by semicolons. In u(d) and u(Δt), a number alone is a standard uncertainty u; with ± or +- before it, it is a limit ±a. A value may carry its standard uncertainty in brackets, as in 1.250(3); a number typed after it with ± is taken as the same.
how-delays = Instead of typing edges, add photos of the screen or the recorded traces of a whole run. The page suggests where the edges are; you check and accept.
how-line = Look at the residuals first: without a pattern, most of them between −2 and 2. A row far from the line is usually a mistake: find it. A step between two rails points to their splice. A curve has a cause, too. Strike a row out only with a reason.
how-uncertainty = The budget lists what makes the result uncertain, the largest component first: improve that one. The Monte Carlo check tests whether the budget’s interval can be trusted.
how-result = Copy the sentences, or give c with its standard uncertainty u, or with U, k and the coverage probability. A difference from the defined value larger than U means that an effect may be missing from the budget.
how-report = Fill in the fields, open the report and print it, or hand in the bundle. The bundle holds the whole notebook with every change, and can be opened again.
how-class = Choose the files that were handed in. Each result is recalculated from its readings. Look first at notebooks with notices, or with stored values that differ; open one to see every change.

## A field

field-if-empty = Default: { $value }
field-if-empty-limit = Default: ±{ $value }, so u = a ÷ √3 = { $u }
field-if-empty-exact = Default: 0, treated as exact
field-if-empty-behind = Default: { $value }, limit ±{ $limit }, so u = a ÷ √3 = { $u }
field-behind-limit = No uncertainty after ±: default limit ±{ $limit }, so u = a ÷ √3 = { $u }
field-behind = Standard uncertainty u = { $u }
field-kind = { $field }: typed as
field-kinds-limit = limit ±a
field-kinds-standard = standard uncertainty u
field-follows = u = a ÷ √{ $root } = { $u }
defaults-half_pulse = half of the smallest pulse
defaults-exact = 0, treated as exact

## A typed number that can't be used

number-empty = Nothing is written here. Type a number.
number-empty_repeat = Repeated reading { $position } is empty. Type a number there, or remove the extra semicolon.
number-none = “{ $found }” is not a number. Type digits, for example { $example }.
number-comma = “{ $found }” has a comma, but this notebook uses a decimal point. Write a point, and a space between thousands. Before the first number is typed, the comma can be chosen in the settings.
number-point = “{ $found }” has a point, but this notebook uses a decimal comma. Write a comma, and a space between thousands. Before the first number is typed, the point can be chosen in the settings.
number-several_marks = “{ $found }” has more than one decimal mark. Keep one.
number-grouping = “{ $found }” has spaces that do not separate groups of three digits. Remove them. Only repeated readings of an edge may follow one another, separated by semicolons.
number-exponent = “{ $found }” is not a complete power of ten. Remove it, or write it as e8 or × 10^8.
number-shared_exponent = In “{ $found }” the power of ten may belong to both numbers or only to the second. Put brackets around both, or write the power after each.
number-negative_uncertainty = “{ $found }” is an uncertainty below zero. Write it without a minus sign.
number-unknown_unit = “{ $found }” is not a unit of this field. These can be used: { $units }. Write one of them, once, after the number.
number-wrong_unit = “{ $found }” is a unit of another quantity: { $dimension }. Here the quantity is: { $expected }. These units can be used: { $units }.
number-unexpected = “{ $found }” was not expected after the number. Write one number, for example 12.
number-too_large = “{ $found }” is too large to calculate with. Check the power of ten.
number-too_small = “{ $found }” is too small to calculate with. Check the power of ten.
number-too_long = This entry has { $length } characters; a number may have at most { $limit }. Shorten it.
number-mixed_units = Some of the repeated readings have a unit and some have none. Write the unit after each of them, or after none.
number-uncertain = “{ $found }” carries an uncertainty, which would have no effect here. Write one number alone, without ± and without brackets. If this quantity has a field for its uncertainty, state it there; otherwise as a component under “Other uncertainty components”.
number-uncertain_uncertainty = “{ $found }” has an uncertainty behind the number, but this field is an uncertainty itself. Write one number alone, without ± after it and without brackets.
number-uncertain_edge = “{ $found }” has an uncertainty behind a number, which would have no effect here. Write the edge alone, without ± and without brackets. One uncertainty for all edges is stated in the field “Uncertainty of one edge reading”.
number-limit_sign = “{ $found }” states a limit, but this field holds a standard uncertainty. Choose “{ $kind }” beside it, or write the number without ±.
number-negative = “{ $found }” is negative. An uncertainty is zero or more.
number-not_positive = “{ $found }” is not above zero. Write a number above zero.
number-not_whole = “{ $found }” is not a whole number from { $least } to { $most }.
number-too_large_ratio = “{ $found }” is more than 50 %. A number without a unit is in per cent; ppm can be written too.
number-too_large_offset = “{ $found }” is so large that no line can be fitted. Check the number and its unit.
number-coverage = A coverage probability is at least 50 % and below 100 %, for example 95 %. A number without a unit is in per cent.
number-fraction = A constant fraction is from 10 % to 90 %. A number without a unit is in per cent.
number-beam_angle = At an angle of more than 500 mrad the beam would not reach the carriage. Check the unit: a number without one is in mrad.
number-last_mark = The last mark must be the larger reading. Write the smaller reading as the first mark, whichever way the ruler counts.

dimension-length = length
dimension-time = time
dimension-timeperdivision = time per division
dimension-divisions = number of divisions
dimension-ratio = ratio
dimension-angle = angle
dimension-frequency = frequency
dimension-temperature = temperature
dimension-pressure = pressure
dimension-wavelength = wavelength
dimension-voltage = voltage
dimension-speed = speed
dimension-pixels = distance in pixels

## Air whose index is not known

air-out_of_range = { $input }: { $value }. The refractive index of air can be calculated only from { $low } to { $high }. Check the number and its unit.
air-vapour = At this temperature and humidity the water vapour alone would have a pressure of { $vapour }, more than the stated air pressure of { $pressure }. Check pressure, temperature and humidity.

## A rail whose position is not known

splice-unstated = State the position of this rail. Until then its readings have no distance.
splice-no_distance = Write the distance of that mark from the splitter.
splice-no_mark = Write a reading on this rail.
splice-no_mark_before = Write a reading on the previous rail.
joint-no_rail_before = The first rail has no rail before it. State the ruler reading at the splitter, or the distance of a mark.
joint-rail_before_unplaced = The position of the previous rail is not known yet. State that one first.
joint-no_span_before = A fitted position begins at the far end of the previous rail. Write the first and last mark of that rail.
joint-no_pairs = Write at least one carriage position as read on both rulers.

## A row that can't be used yet

row-place_twice = The distance is entered twice: as a ruler reading and as a distance. Clear one of them.
row-distance_unreadable = The distance is not a number that can be used. Correct it.
row-no_reading = The ruler reading is missing. Write it.
row-reading_unreadable = The ruler reading is not a number that can be used. Correct it.
row-rail_unplaced = The position of its rail is not known. State it under Apparatus.
row-no_rail = No rail is described. Describe one under Apparatus, or enter the distance itself.
row-rail_unnamed = The rail is missing. Write the name of the rail on which the reading was taken.
row-rail_unknown = No rail has the name “{ $name }”. The rails are: { $names }.
row-rail_unknown_none = No rail has the name “{ $name }”. Describe the rails under Apparatus.
row-rail_ambiguous = More than one rail has the name “{ $name }”. Give each rail a name of its own under Apparatus.
row-distance_uncertainty_idle = No distance is typed in this row, so this uncertainty has no effect. Clear it: the uncertainty of a ruler reading is stated at its rail.
row-delay_uncertainty_idle = No delay is typed in this row, so this uncertainty has no effect. Clear it: the uncertainty of an edge is stated under Apparatus, that of a mark on a photo under Delays; that of traces is measured.
row-delay_twice = The delay is entered twice: as edges on the screen and as a delay. Clear one of them.
row-delay_twice_evidence = The delay is entered twice: here, and by the photo or the traces of this row. Clear this cell, or remove the photo or the traces.
row-delay_unreadable = The delay is not a number that can be used. Correct it.
row-limit = { $name }: { $typed } is read as a limit ±a, so u = a ÷ √3 = { $u }.
row-uncertainty_twice = The uncertainty is entered twice: after the value and here. Clear one of them.
row-edge_unreadable = The position of an edge is not a number that can be used. Correct it.
row-no_delay = The delay is missing. Read both edges on the screen.
row-time_base_unreadable = The time base is not a number that can be used. Correct it.
row-no_time_base = The time base is missing. Write the time per division of the screen.
edges-missing = One edge is missing. Read both edges: the delay is the distance between them on the screen.
edges-unpaired = { $a ->
    [one] One reading of edge A and { $b } of edge B
   *[other] { $a } readings of edge A and { $b } of edge B
  } cannot be paired. Write the same number of readings for both, or one reading for one of them.
edges-no_mark = Edge { $edge } is not marked. Mark it at half of its own height.
edges-off_plane = Mark { $n } of edge { $edge } is outside the plane of the screen. Mark it again.
edges-no_repeats = With one mark on each edge there is no scatter. Mark the edges again, or state an uncertainty in pixels.
edges-not_between = Edge { $edge } is not marked between its baseline and its top. Mark the baseline where the trace leaves it, and the top where it reaches it: later, and at another height.
edges-uncertainty = The uncertainty of a mark must be zero or more pixels.
marks-no_grid = The grid of its photo is not marked yet. Mark the four corners of the grid.
grid-no_divisions = The corners of the grid are less than one division apart. State how many divisions lie between them.
plane-mark = { $n } (column { $column }, row { $row })
plane-too_few = { $got ->
    [one] One corner mark is too few.
   *[other] { $got } corner marks are too few.
  } Mark the four corners of the grid.
plane-not_finite = Corner mark { $mark } has a coordinate that is not a number. Mark it again.
plane-uncertainty = The uncertainty of a corner mark must be zero or more pixels.
plane-same_place = Corner marks { $first } and { $second } are at the same point of the photo. Move one of them to its own crossing.
plane-same_crossing = Corner marks { $first } and { $second } are for the same grid crossing. Give one of them another column or row.
plane-on_one_line = Corner marks { $marks } lie on one line in the photo. Move one of them, so that the four span an area.
plane-crossings_on_one_line = Corner marks { $marks } are for grid crossings on one line. Use the corners of a rectangle.
plane-crossed = The outline of the corner marks crosses itself. Exchange marks { $first } and { $second }.
plane-out_of_place = The other corner marks show that corner mark { $mark } cannot be there. Move it to its crossing.
plane-mirrored = The corner marks go round the screen the wrong way, as in a mirror. Columns count along the time axis, rows downwards. Mark the corners in their order.
plane-undetermined = The corner marks do not determine a plane. Move them farther apart.
traces-not_measured = Its traces were not timed in the way that is chosen now. Measure them again.
traces-no_delay = Its traces give no delay: { $why }
traces-unreadable = The delay stored with its traces is not a number that can be used. Measure the traces again.

## A change that is refused

edit-no_row = There is no row number { $n }. The change was left out.
edit-no_rail = There is no rail number { $n }. The change was left out.
edit-no_setting = There is no time base setting number { $n }. The change was left out.
edit-no_shared = There is no uncertainty component number { $n }. The change was left out.
edit-no_position = There is no planned position number { $n }. The change was left out.
edit-no_grid = There is no marked grid number { $n }. The change was left out.
edit-taken = The number { $n } is in use already. A new row or rail needs a number of its own.
edit-too_high = The number { $n } is too high for a row or a rail. The highest is { $most }.
edit-no_reason = Row number { $n } was not struck out. State the reason first.
edit-no_name = Type the name of the person who read the cautions first.
edit-not_in_group = Undo, redo, the seal and handing out cannot be part of a group of changes.
edit-no_second_seal = The result was sealed once already, or the seal is not complete. It was left unchanged.
edit-no_seal = There is no closed seal to open.
edit-nothing_to_undo = There is nothing left to undo.
edit-nothing_to_redo = There is nothing left to redo.

## Files that can't be opened

file-not_json = This is not a whole notebook file: it cannot be read beyond line { $line }, column { $column }. Download the file again.
file-foreign = This file is not a notebook of this program. Choose a notebook file or a bundle that was downloaded from one.
file-later_format = This notebook was made by a later version of this page, in format { $format }. It was left unchanged. Open it with that version.
file-later_name = This notebook was made by a later version of this page, which knows “{ $name }”. It was left unchanged. Open it with that version.
file-form = Something in this notebook file does not follow its format, at line { $line }, column { $column }. Download the file again.
file-bad_entry = Entry { $n } of the notebook’s history cannot be used. { $why }
bundle-notebook = “notebook.json” in this bundle cannot be opened. { $why }
bundle-not_zip = This file is not a bundle: it is not a zip. Choose the .zip that was downloaded from a notebook.
bundle-cut_short = This bundle is cut short: its table of entries is missing. Download the file again.
bundle-damaged = This bundle is damaged. Download the file again.
bundle-damaged_entry = “{ $entry }” in this bundle is damaged. Download the file again.
bundle-too_many_entries = This bundle holds { $found } entries, more than the limit of { $limit }. It does not come from a notebook: do not open it.
bundle-entry_too_large = “{ $entry }” unpacks to more than { $limit } bytes. If it is a photo or a recording, use a smaller one. Otherwise do not open this file.
bundle-too_large = With “{ $entry }” this bundle unpacks to more than { $limit } bytes in all. Leave out photos or recordings. If there are none, do not open this file.
bundle-too_tight = “{ $entry }” unpacks to more than { $ratio } times its packed size, as no real data do. Do not open this file.
bundle-bad_name = The entry name “{ $entry }” is refused: it could lead out of its folder, or some systems cannot store it. Download the file again, or unpack it and choose the files that were in it.
bundle-duplicate = This bundle holds “{ $entry }” twice (the other one is “{ $other }”). Download the file again.
bundle-encrypted = “{ $entry }” is encrypted. Unpack the bundle with its password and pack it again without one.
bundle-method = “{ $entry }” is packed by a method that is not read here. Pack the bundle again as an ordinary zip (deflate).
bundle-no_contents = This zip is not a bundle: its list “contents.json” is missing or cannot be read. Choose the .zip as it was downloaded from a notebook.
bundle-later = This bundle was made by a later version of this page (format { $found }; formats up to { $known } are read here). It was left unchanged. Open it with that version.
bundle-unlisted = “{ $entry }” is not in the bundle’s list “contents.json”: it was added later. Remove it, or download the file again.
bundle-missing = “{ $entry }” is missing from this bundle. Download the file again.
bundle-changed = “{ $entry }” was changed after the bundle was made: its size or SHA-256 is not the one in “contents.json”. Download the file again.
bundle-misnamed = “{ $entry }” is another photo than its name says: its SHA-256 differs. Download the file again.
table-ragged = Record { $record } of the table has { $found } cells, the first has { $expected }. Fill the missing cells, or remove the additional ones.
table-kind = “{ $kind }” is not a format for tables. Use CSV, LaTeX or a pipe table.
chart-too_small = The plot has { $width } × { $height } pixels and needs at least { $least_width } × { $least_height }. Make it larger.
chart-surface = The browser did not allow drawing. Reload the page, or use a newer browser.
shelf-full = The browser’s storage for this page is full. Nothing stored before was changed. Download the bundle of this notebook now, then delete notebooks permanently.
shelf-refused = The browser did not store the notebook. Nothing stored before was changed. Download the bundle of this notebook now.

## Photos that can't be used

size-unnamed = The photo
size-unknown = { $file } is not an image in JPEG, PNG, WebP or GIF format. Save it as JPEG or PNG.
size-heif = { $file } is a photo in HEIF format (HEIC), which few browsers can read. Save it as JPEG, or set the camera to JPEG.
size-cut = { $file } ends within its header. Copy the file again from the camera.
size-damaged = { $file } is damaged: its header does not give its size. Copy the file again from the camera.
size-too_large = { $file }: a photo of { $width } × { $height } pixels is too large. The limit is { $most } million pixels. Scale it down, or set the camera to smaller photos.
picture-bytes = The photo does not fill { $width } × { $height } pixels. Load it again.
picture-too_small = A photo of { $width } × { $height } pixels is too small to show a grid. Use a larger one.
propose-divisions = A grid of { $columns } × { $rows } divisions cannot be looked for. State from { $least } to { $most } each way.
propose-no_grid = No grid of { $columns } × { $rows } divisions was found on this photo.

## Trace files that can't be read

read-file = { $file }: { $why }
read-empty = the file is empty. Save the trace again.
read-binary = byte { $at } is not text, so this is a binary file. Save the trace as delimited text.
read-no_columns = no columns of numbers were found. Choose the column separator and the decimal mark, or save the trace as delimited text.
read-no_time = there is no time column and no sampling interval. State the interval.
read-no_channel = no column is marked as a trace. State which column holds the voltage.
read-few_rows =
    { $rows ->
        [one] there is only { $rows } row of samples; at least { $needed } are needed. Check the first line of samples.
       *[other] there are only { $rows } rows of samples; at least { $needed } are needed. Check the first line of samples.
    }
read-missing_field = line { $line } ends before column { $column }. The file may be cut off, or the column separator is another one.
read-not_a_number = line { $line }, column { $column }: “{ $found }” is not a number. Check the decimal mark and the first line of samples.
read-no_value = line { $line }, column { $column }: “{ $found }” marks a sample without a value, such as an overflow. Record the trace again with a larger range.
read-unequal = line { $line }: the time is { $found } ns; with equal steps of { $step } ns it should be { $expected } ns. Look for a missing or a repeated line. Steps may differ by less than half a step, if the times have enough digits to show by how much.
read-other_times = column { $column } has other times than the first column of times: the traces were not sampled together. Save each in a file of its own.
read-no_advance = the time does not increase from the first row (line { $first }) to the last (line { $last }). Check which column is the time.
reading-none = No trace file is chosen. Choose one that holds both traces, or one for each detector.
reading-third = { $file }: this is a third trace file. Choose one that holds both traces, or one for each detector.
reading-one = { $file }: this file holds only one trace. Add the file with the trace of the other detector.
reading-lacks_a = { $file }: no column is marked as the trace of detector A. State which column holds it.
reading-same = { $file }: both traces hold the very same samples, as where one was saved twice. Save each detector’s own.
reading-apart = { $file }: this file does not say at which time its first sample was taken, so its edges can’t be compared with those of { $other }. Save both traces in the same way, with a column of times.
reading-lacks_b = { $file }: no column is marked as the trace of detector B. State which column holds it.

## Traces without a delay

trace-refused = { $file }, trace { $trace }: { $why }
trace-few_samples =
    { $samples ->
        [one] { $samples } sample is too few for a baseline and an edge; at least { $needed } are needed. Record more samples.
       *[other] { $samples } samples are too few for a baseline and an edge; at least { $needed } are needed. Record more samples.
    }
trace-not_finite = sample { $sample } has no finite value. Record the trace again.
trace-step = the sampling interval is { $step } ns; it must be above zero. Correct it.
trace-no_pulse = no pulse. The trace rises { $height } V above its baseline (highest at sample { $sample }); a pulse rises more than 4 times the noise, here { $noise } V. Check which column is the trace, or average more pulses.
trace-clipped =
    { $samples ->
        [one] clipped: from sample { $sample } the top is flat at { $limit } V for { $samples } sample. Record with a larger range.
       *[other] clipped: from sample { $sample } the top is flat at { $limit } V for { $samples } samples. Record with a larger range.
    }
trace-no_baseline = there is no quiet baseline before the pulse, which seems to begin at sample { $sample }: the record begins too late, or with a spike or another pulse. Record more time before the trigger.
trace-no_top = the record ends at sample { $last }, before the top of the pulse. Record more time after the trigger.
trace-level = a threshold of { $level } V above the baseline is not on the edge. Here it must be between { $lowest } V and { $highest } V.
trace-fraction = a fraction of { $fraction } is not on the edge. It must be between 10 % and 90 %.
trace-hidden = the noise hides the crossing near sample { $sample }: its uncertainty of { $u } ns is more than a quarter of the rise time of { $rise } ns. Average more pulses.
trace-few_on_edge =
    { $samples ->
        [one] only { $samples } sample lies on the edge near sample { $sample }; a line needs { $needed }. Sample faster, or use a constant fraction.
       *[other] only { $samples } samples lie on the edge near sample { $sample }; a line needs { $needed }. Sample faster, or use a constant fraction.
    }
trace-unequal_steps = the sampling intervals of the two traces are { $first } ns and { $second } ns. Cross-correlation needs equal ones. Choose another way to time the edges.
trace-no_lag = the two edges do not match near sample { $sample }: their shapes differ too much, or the record ends. Choose another way to time the edges.

## Uncertainty components and matrices that can't be used

shared-no_degrees = Student’s t needs its degrees of freedom. Write them, or choose another distribution.
shared-no_rows = This component belongs to no row of the line. Choose other rows, or remove it.
covariance-shape = A covariance matrix of { $n ->
    [one] one row needs one line with one number.
   *[other] { $n } rows needs { $n } lines with { $n } numbers each.
  }
covariance-own_uncertainty = A row of this matrix has an uncertainty of its own. Clear that uncertainty, or the matrix.
covariance-row_twice = A row appears twice in this matrix. Remove one of the two.
covariance-not_direct = A covariance needs distance and delay typed in its row.

## Why there is no line or no result

rail-named = “{ $name }”
refusal-marked = { $refusal } These fields cannot be used as they are: { $fields }.
refusal-too_few_rows = { $got ->
    [0] No row has both a distance and a delay yet.
    [one] One row is not enough for a line.
   *[other] { $got } rows are not enough here.
  } At least { $needed } rows at different positions are needed; five or more are better.
refusal-all_positions_equal = All rows have the same distance, so the line has no slope. Take readings at other positions.
refusal-zero_uncertainty = { $n ->
    [one] Row { $rows } states
   *[other] Rows { $rows } state
  } an uncertainty of zero in distance and in delay. No reading is exact: state its uncertainty.
refusal-indefinite = { $n ->
    [one] Row { $rows } has
   *[other] Rows { $rows } have
  } a covariance that cannot exist: a variance would be negative. Check the matrix.
refusal-singular = With this matrix, a combination of rows { $rows } has no uncertainty. Check the matrix, or state what the rows share as a component.
refusal-not_symmetric = Rows { $rows } have two different covariances in the matrix. Write the same number in both places.
refusal-not_finite = Row { $rows } gives a number too large to calculate with. Check its distance, its delay, their uncertainties and units.
refusal-negative_uncertainty = { $n ->
    [one] Row { $rows } states
   *[other] Rows { $rows } state
  } an uncertainty below zero. Write zero or more.
refusal-undetermined_rail = These readings do not determine the position of rail { $rails }. Take readings on both sides of its splice, and at two or more distances on one side; or state its position.
refusal-undetermined_slope = The slope cannot be separated from the fitted position of rail { $rails }. Take readings at two or more distances on one rail, or state the position.
refusal-out_of_range = Distances, delays or uncertainties are too large or too small to calculate with. Check their units.
refusal-no_convergence = No slope fits best: within their uncertainties all rows could have the same distance. Take readings farther apart, and check the uncertainties of the distances.
refusal-length_mismatch = Rows and uncertainties differ in number. This is a fault of this page, not of your readings. Keep the bundle of this notebook and report the fault.
refusal-some_unstated = { $n ->
    [one] Row { $rows } lacks
   *[other] Rows { $rows } lack
  } an uncertainty of the distance or of the delay that other rows state. State it in each row, or in none.
refusal-slope_not_positive = The delay does not increase with the distance, so there is no speed. Check the direction of the scales, and whether edges A and B were swapped.
refusal-no_uncertainty = Two rows give a slope, but no uncertainty. Take more rows, or state the uncertainty of each.
refusal-no_air_index = The refractive index of air is not known for the values under Apparatus. Correct them there.
refusal-no_scatter = The rows lie exactly on a line, so there is no scatter. State the uncertainty of each row.
marked-bench = “{ $field }”
marked-rail = “{ $field }” of rail “{ $rail }”
marked-splice = “{ $field }” in the position of rail “{ $rail }”
marked-setting = time-base setting { $n }
marked-shared = other uncertainty component { $n }
marked-covariance-distances = the covariance matrix of distances
marked-covariance-delays = the covariance matrix of delays
marked-covariance-both = the covariances of distance and delay
budget-few_degrees = { $got } degrees of freedom are too few for a coverage factor: at least 1 is needed. Check the degrees of freedom stated for the components.
budget-no_probability = A coverage probability is between 0 and 1; { $got } is not.
trials-no_seed = “{ $text }” is not a seed. Write a whole number of at most 19 digits, or leave the field empty.
trials-no_count = “{ $text }” is not a number of trials. Write a whole number from { $least } to { $most }, or leave the field empty.
trials-no_value = { $without } of { $trials } trials gave no value, so their distribution cannot be summarized. Smaller uncertainties or more readings would help.
trials-too_few = This coverage interval needs at least { $needed } trials; there are { $got }.
trials-out_of_range = The values of the trials are too large to calculate with. Check the units.

## Why nothing is planned

plan-no_rails = There is nothing to plan with yet. Describe a rail under Apparatus.
plan-no_place = No rail can be used for planning yet. Write its first and last mark under Apparatus, and state its position.
plan-too_few = Plan two or more positions, far apart: a line needs them.
plan-no_uncertainty = The uncertainty of these rows is not known. State under Apparatus how well edges and rulers are read.
plan-no_time_base = “{ $text }” is not a time per division. Write a number above zero, in ns.
plan-no_repeats = “{ $text }” is not a number of rows. Write a whole number from 1 to { $most }.
plan-no_rehearsal = Nothing can be rehearsed with this apparatus yet. { $why } Change it under Apparatus.

## The points of the plots, as a table

plot-keys-line = Delay against distance; left and right go from reading to reading, Enter to its row; plus and minus zoom, then arrows move, 0 shows all
plot-keys-residuals = Normalized residuals; left and right go from reading to reading, Enter to its row; plus and minus zoom, then arrows move, 0 shows all
plot-closer = Zoom in
plot-wider = Zoom out
plot-whole = All
plot-table = The drawing as a table
points-title = The points as a table
points-hint = The keys ↑ and ↓ go from point to point, Enter goes to the reading.
points-point = Row { $n }: distance { $distance } m, delay { $delay } ns, normalized residual { $residual }
points-struck = Row { $n }: distance { $distance } m, delay { $delay } ns, struck out: { $reason }

## The run played back

replay = Replay
replay-hint = The notebook as it was after each step of its history. Nothing is changed by looking.
replay-step = Step { $n } of { $all }
replay-step-name = Step
replay-row = row { $n }: { $texts }
replay-else = another entry
replay-play = Play
replay-pause = Pause
replay-back = Step back
replay-on = Step forward

## The history, entry by entry

history-hint = What was entered, the newest first, with the time by the clock of the computer it was entered on. Rows have the numbers that they have now. The number of an entry opens the replay there.
history-only = Show
history-all = all entries
history-no-row = apparatus, texts and choices
history-more = Show more
history-take = Download the history (CSV)
history-columns-n = No.
history-columns-at = Time
history-columns-where = Where
history-columns-from = From
history-columns-to = To
history-columns-digest = Digest
history-replay = Replay from entry { $n }
history-no-time = No time was recorded
history-begun = row begun
history-added = added
history-removed = removed
history-struck = struck out: { $reason }
history-restored = restored
history-row-gone = a row that is no longer there
history-undo = entry { $n } undone
history-redo = entry { $n } redone
history-merged =
    { $n ->
        [one] history of { $n } entry, digest { $digest }
       *[other] history of { $n } entries, digest { $digest }
    }
history-digests-coming = The digests are being calculated…
history-proves = Digest of the whole history: { $digest }. The file tells that of each entry: SHA-256 of the digest before it and of the entry itself. If an entry is changed, moved or left out later, its digest and all that follow it change: anybody who has noted one will see it. It does not show who entered something, or whether the clock was right. Whoever changes a file can calculate new digests.

## A lab partner's notebook, merged

merge-title = Merge a lab partner’s notebook
merge-hint = Takes over what your partner entered in a notebook from the same hand-out. You see it first, and choose where you differ.
merge-entries =
    { $n ->
        [one] { $n } entry
       *[other] { $n } entries
    }
merge-taken = Changed by your partner alone, and taken over: { $rows ->
        [0] no new rows
        [one] one new row
       *[other] { $rows } new rows
    }, { $n ->
        [0] nothing else
        [one] one other change
       *[other] { $n } other changes
    }
merge-more =
    { $n ->
        [one] One more change is not listed here.
       *[other] { $n } more changes are not listed here.
    }
merge-parted = After entry { $n }, its history differs from the one that was merged before: somebody continued from an older file, or changed an entry. Rows entered after that entry are taken as new ones.
merge-behind = Your partner has merged another version of your notebook: after entry { $n }, its history differs from this one. What was entered there counts as your partner’s.
merge-kept =
    { $n ->
        [one] One row here has no time base of its own. The one that it uses now is written into it, because merging could change it.
       *[other] { $n } rows here have no time base of their own. The one that they use now is written into them, because merging could change it.
    }
merge-astray =
    { $n ->
        [one] Check the rail of row { $rows } after merging: only one of the two notebooks has it, or two rails share its name, and the row may then be read on another rail of that name.
       *[other] Check the rails of rows { $rows } after merging: only one of the two notebooks has them, or two rails share a name, and the rows may then be read on other rails of that name.
    }
merge-astray-planned =
    { $n ->
        [one] Check the rail of the planned position { $positions } after merging: it may be planned on another rail of that name.
       *[other] Check the rails of the planned positions { $positions } after merging: they may be planned on other rails of that name.
    }
merge-differ = Your notebooks differ in what follows. Choose for each what yours keeps.
merge-agree = Nothing was changed differently in both notebooks.
merge-clash = Difference { $n } of { $all }
merge-ours = In this notebook
merge-theirs = In your partner’s
merge-choices-ours = Keep mine
merge-choices-theirs = Take my partner’s
merge-choices-both = Keep both: my partner’s row is added at the end
merge-rest = All differences without a choice:
merge-empty = (empty)
merge-unlike = differs in marks or choices
merge-left = Not merged: the student number, the names of those who have read the cautions, and the seal. What you do not take stays in your partner’s file.
merge-open =
    { $n ->
        [one] One difference is left without a choice.
       *[other] { $n } differences are left without a choice.
    }
merge-confirm = Merge
merge-done = Your partner’s notebook was merged.
merge-one = Several files: choose or drop one notebook at a time.
merge-changed = Not merged: this notebook has changed meanwhile. Choose your partner’s file again.
merge-refused = { $name } was not merged, and nothing was changed. { $why }
merge-refused-other = It does not come from the same hand-out as this notebook: their histories begin differently.
merge-refused-changed = One of the first { $n } entries of its history, which are the hand-out’s, is not what it was: the digests do not agree. An entry was changed, or it is another data set of the same hand-out. Ask your partner for the file as it was downloaded.
merge-refused-early = One of the two notebooks was merged with an earlier version of this page, which kept too little to tell what both have. Undo that merge, or merge the file from before it.
merge-refused-mark = The two notebooks have different decimal marks. Choose the same one in both first.
merge-refused-nothing = Everything in it is in this notebook already.

## The list of keys

keys = Keys
keys-everywhere = Everywhere
keys-readings = In the readings
keys-points = In the table of the points
keys-plots = On the plots of line and residuals
keys-plan = On a planned position
keys-marks = On a mark of a photo
keys-traces = On a plot of two traces
keys-press-undo = Ctrl + Z
keys-does-undo = Undo
keys-press-redo = Ctrl + Y, or Ctrl + Shift + Z
keys-does-redo = Redo
keys-press-leaf = Alt + Page Down, Alt + Page Up
keys-does-leaf = The next part of the notebook (bench, readings, line …), the one before
keys-press-list = ?
keys-does-list = This list, when no field has the focus
keys-press-next = Enter
keys-does-next = The same cell of the next row; after the last, a new row, at the first cell without a suggestion
keys-press-before = Shift + Enter
keys-does-before = The same cell of the row before
keys-press-up-down = ↑ ↓
keys-does-up-down = The cell above, the cell below
keys-press-tab = Tab
keys-does-tab = The next cell
keys-press-beside = ← →, Home, End
keys-does-beside = The cell beside, the first, the last, while the whole text of the cell is selected
keys-press-edit = F2
keys-does-edit = Put the cursor into the text; again: select it all
keys-press-point = ↑ ↓
keys-does-point = The point above, the point below
keys-press-ends = Home, End
keys-does-ends = The first point, the last
keys-press-to-row = Enter
keys-does-to-row = Go to its row in the readings
keys-press-reading = ← →
keys-does-reading = Go from reading to reading, while all is shown
keys-press-closer = + −
keys-does-closer = Zoom in, zoom out
keys-press-move = ← → ↑ ↓
keys-does-move = Move what is shown, after zooming in
keys-press-all = 0, Home
keys-does-all = Show all
keys-press-untell = Esc
keys-does-untell = Close the label of a point
keys-press-position = ← →
keys-does-position = Move it a little
keys-press-far = Page Up, Page Down
keys-does-far = Move it ten times as far
keys-press-give-up = Esc
keys-does-give-up = Put it back
keys-press-mark = ← → ↑ ↓
keys-does-mark = Move it by one pixel
keys-press-fine = Shift and an arrow
keys-does-fine = Move it by a tenth of a pixel
keys-press-coarse = Alt and an arrow
keys-does-coarse = Move it by ten pixels
keys-press-accept = Enter
keys-does-accept = Accept the marks
keys-press-zoom = + −, or ↑ ↓
keys-does-zoom = Zoom in, zoom out
keys-press-aside = ← →
keys-does-aside = Move along the time axis
keys-press-whole = 0
keys-does-whole = Show the whole pulse

## The wall view

wall = Wall view
wall-line = Line
wall-bench = Bench
wall-result = Result
wall-row = Row { $n }: d = { $d } m, Δt = { $delay } ns
wall-blocked = The browser did not open a second window. Allow pop-up windows for this page and try again.

## A message that offers to undo

undone = Undone.
undone-at = Undone: { $where }
redone = Redone.
redone-at = Redone: { $where }

## A hand-out

handout-title = Hand out to a class
handout-hint = Make a hand-out from this notebook: a copy in which you fix what students may not change, and ask for what you need from them. Your own notebook stays as it is.
handout-rules = What is fixed, and what is asked for
handout-rules-hint = Open: students may change it. Fixed: stays as it is now; neither edits nor Undo change it. Asked for: a notebook without it counts as incomplete. Positions, time bases and readings are fixed in the rows that are here now. Local rules and the contact are always fixed.
handout-usual = Apply the usual choices
handout-rules-open = open
handout-rules-fixed = fixed
handout-rules-needed = asked for
handout-pieces-title = Title
handout-pieces-cautions = Cautions, read by name
handout-pieces-source = Carriage and source
handout-pieces-instruments = Instruments, cables and trigger
handout-pieces-rails = Rails
handout-pieces-screen = Screen and how edges are read
handout-pieces-time_bases = Time bases
handout-pieces-air = Air
handout-pieces-positions = Positions
handout-pieces-readings = Readings
handout-pieces-evidence = Photos and traces
handout-pieces-uncertainty = Other uncertainty components
handout-pieces-line = Line, and which rows are struck out
handout-pieces-result = Result and its coverage probability
handout-pieces-people = Names
handout-pieces-student_number = Student number
handout-pieces-group = Group
handout-pieces-date = Date
handout-pieces-aim = Aim
handout-pieces-method = Method
handout-pieces-discussion = Discussion
handout-pieces-answers = Answers to the questions
handout-tasks-title = Texts and questions
handout-tasks-hint = Each stands at the start of the section that it is about. *Emphasis*, **strong emphasis**, lists, quotations, code and links are written as in CommonMark.
handout-add = Add a text or question
handout-at = About
handout-asks = Asks for
handout-asks-nothing = nothing: to be read
handout-asks-words = an answer in words
handout-asks-number = a number
handout-text = Text
handout-remove = Remove this text
handout-sealed = Start with a sealed result
handout-take = Download the hand-out
handout-post = Ways to hand it out
handout-take-hint = A hand-out holds what is in the notebook now, with the history of its readings and settings, but without your name, your answers, earlier wordings of texts, remarks and questions, and what you undid. Nothing is sent: you hand it over. Opened again on the same computer, it leads back to the notebook that was begun from it.
handout-rehearsal = This notebook is a rehearsal: everybody who gets it can show its true values under Plan. For values that stay hidden, make data sets below.
handout-file-title = As a file
handout-file-hint = For a course page or a shared folder. It holds photos and traces too. Students open it on this page, by Notebooks, then “{ $open }”.
handout-address = Put beside this page on its site, it also opens by this address: { $address }
handout-link-title = As a link
handout-link-hint = For an e-mail or a message. The link itself holds the hand-out; nothing of it is sent to the site. There is room for texts and readings, not for photos and traces.
handout-link = Copy the link
handout-link-size = The link has { $n } bytes; the limit is { $most }.
handout-link-too_long = The link would have { $n } bytes. Some programs cut links that are longer than { $most }. Shorten the texts or leave out rows, or hand out one HTML file instead.
handout-link-files = No link can hold the photos or traces of this notebook. Hand out the file or one HTML file instead.
handout-link-no_site = This page was opened from a file, so its links lead nowhere on other computers. Open it from a site, or hand out the file or one HTML file instead.
handout-page-title = As one HTML file
handout-page-hint = For a USB stick, an attachment or a room without a network. It holds this program and the hand-out, about 1.3 MB, and opens with a double click.
handout-page = Download one HTML file
handout-no-program = “{ $name }”, the program as one file, could not be loaded from beside this page. Check the network, or hand out the file instead.
sets-title = One data set for each student
sets-hint = Each student gets readings, photos or traces of their own at the planned positions, from a simulated copy of this bench, in a hand-out that is otherwise like this one. Hidden in each are the delay t₀ at zero distance, and errors of scales, splices and time bases, drawn from their stated uncertainties. The speed of light is c₀ in all of them. The readings of this notebook are not handed out.
sets-protects = The hand-outs hold neither these true values nor what they were drawn from. A neighbour’s numbers do not fit, and nobody can read the answer out of a file. They do not protect against a key that is passed on, or against work done by somebody else.
sets-form = What each student gets
sets-forms-typed = Typed readings
sets-forms-photographs = Photos of the screen, to be marked
sets-forms-traces = Recorded traces, to be measured
sets-names = Names, one on each line, or how many
sets-make = Make the data sets
sets-making =
    { $n ->
        [one] The data set is being made…
       *[other] { $n } data sets are being made…
    }
sets-made =
    { $n ->
        [one] The data set was made. Download both files: the key is kept nowhere else, and a set that is made again has other readings.
       *[other] { $n } data sets were made. Download both files: the key is kept nowhere else, and sets that are made again have other readings.
    }
sets-stopped = Stopped. No data set was made.
sets-no-photo = The photo of the set-up is not kept in this browser, and is in none of them. Add it again, and make them anew.
sets-off_screen = Row { $row }: the delay does not fit on the simulated screen. Plan a slower time base there, or state a screen of at most 20 divisions.
sets-too_late = Row { $row }: the delay is longer than 2 µs, and does not fit in a simulated record. Plan nearer positions.
sets-position = A planned position can’t be read. Correct or remove it in the plan first.
sets-take = Download the data sets (zip)
sets-take-key = Download the key
sets-key-left = These data sets are gone from this page, and you have not downloaded the key to them. Without it, their true values are lost.
sets-file = data-sets
sets-key-file = key
sets-number = whoever has data set { $number }
sets-error = { $name }: { $value }
sets-notes-typed = These readings come from a simulated bench. They were drawn for { $who } and for nobody else.
sets-notes-photographs = These photos show the screen of a simulated bench. They were drawn for { $who } and for nobody else. Accept or correct the proposed marks on each of them.
sets-notes-traces = These traces come from a simulated bench. They were drawn for { $who } and for nobody else. Press “Measure again” to take the delays from them.
posted-begun = You began “{ $title }” here before. This is your notebook, as you left it.
posted-others = A notebook was begun from it on this computer before. If that one is yours, open it under “Notebooks”.
posted-anew = Begin a new one
posted-asks = It is a hand-out: what is asked for is listed under “Report”.
posted-show-asked = Show what is asked for
posted-refused = The notebook of this address or file was not opened: { $why }
posted-broken = The link is damaged or cut short. Copy the whole link again from where you got it.
posted-too_long = The link is longer than { $most } bytes. Ask for the hand-out as a file.
posted-too_large = The link unpacks to more than { $most } bytes. Ask for the hand-out as a file. If you don’t know who made the link, do not open it.
posted-cut = The notebook inside this HTML file is damaged. Download the file again.
posted-no_site = This page is one file, which loads nothing from a site. Download the notebook, and open it as a file.
posted-elsewhere = “{ $path }” is not on the same site as this page. Only notebooks of the same site are opened by an address. Download the notebook, and open it as a file.
posted-no_notebook = “{ $path }” is not a notebook: its name has to end in .zip or .json.
posted-other_kind = Notebooks are files that end in .zip or .json. Paste a table of readings into a cell of the readings; add photos and traces under “Delays”.
posted-not_there = “{ $path }” could not be loaded from this site. Check the name and the network.
handout-file = hand-out
handout-made = The hand-out was made. Its digest is { $digest }: every notebook made from it shows the same one.
handout-digest = Digest of the hand-out: { $digest }. It is the same in every notebook made from this hand-out.
handout-tasks = From your teacher
handout-answer = Your answer
handout-answer-number = Your answer (a number)
handout-fixed = Fixed by the hand-out.
handout-fixed-rows =
    { $n ->
        [one] Fixed by the hand-out in the row that came with it: { $columns }.
       *[other] Fixed by the hand-out in the { $n } rows that came with it: { $columns }.
    }
handin-title = Hand in
handin-complete = Everything that was asked for is there.
handin-missing =
    { $n ->
        [one] One thing that was asked for is missing:
       *[other] { $n } things that were asked for are missing:
    }
handin-lacks =
    { $piece ->
        [cautions] Cautions: read them, and enter your name there
        [readings] Readings: rows included, at least { $rows }
        [result] Result: there is none yet
       *[other] { $name }: nothing entered yet
    }
handin-answer = Answer: { $question }
handin-take = Download the file to hand in
handin-take-incomplete = Download the file, incomplete
handin-hint = One file, named by group, student number, names and date. Nothing is sent: hand it over the way your teacher asked.
handin-fixed = Fixed by the hand-out: { $pieces }. Everything else is yours to fill in.
handin-nothing-fixed = Nothing is fixed: the whole notebook is yours.
columns-answers-question = question
columns-answers-answer = answer
tables-answers = Questions and answers
edit-no_task = There is no question number { $n }. The answer was left out.
edit-handed_out = This belongs to the hand-out itself. Only its author can change it, in the notebook from which it was made.
edit-undo_stops = All earlier changes came with the hand-out, or were made before the seal. Undo stops here.
edit-fixed =
    { $piece ->
        [title] The title is fixed by the hand-out. It was left unchanged.
        [source] Carriage and source are fixed by the hand-out. They were left unchanged.
        [instruments] Instruments, cables and trigger are fixed by the hand-out. They were left unchanged.
        [rails] The rails are fixed by the hand-out. They were left unchanged.
        [screen] The screen and how edges are read are fixed by the hand-out. They were left unchanged.
        [time_bases] The time bases are fixed by the hand-out. They were left unchanged.
        [air] The air is fixed by the hand-out. It was left unchanged.
        [positions] The positions are fixed by the hand-out. They were left unchanged.
        [evidence] The photos and traces of this row are fixed by the hand-out. They were left unchanged.
        [line] Which rows are struck out is fixed by the hand-out. It was left unchanged.
        [uncertainty] The other uncertainty components are fixed by the hand-out. They were left unchanged.
        [readings] The readings are fixed by the hand-out. They were left unchanged.
        [result] How the uncertainty of the result is stated is fixed by the hand-out. It was left unchanged.
        [aim] The aim is fixed by the hand-out. It was left unchanged.
        [method] The method is fixed by the hand-out. It was left unchanged.
        [discussion] The discussion is fixed by the hand-out. It was left unchanged.
        [people] The names are fixed by the hand-out. They were left unchanged.
        [student_number] The student number is fixed by the hand-out. It was left unchanged.
        [group] The group is fixed by the hand-out. It was left unchanged.
        [date] The date is fixed by the hand-out. It was left unchanged.
        [answers] The answers are fixed by the hand-out. They were left unchanged.
       *[other] This part is fixed by the hand-out. It was left unchanged.
    }

## What a teacher says of a notebook that was handed in

feedback-title = Comments on what you handed in
feedback-teacher = Your teacher
feedback-about = { $from }, { $date }, on this notebook as it was handed in, with { $n } entries in its history. These comments are not part of your report.
feedback-since =
    { $n ->
        [one] Since then { $n } entry was added: a comment may be about something that has changed.
       *[other] Since then { $n } entries were added: a comment may be about something that has changed.
    }
feedback-mark = Grade: { $mark }
feedback-question-gone = a question that is no longer there
feedback-remove = Remove these comments
feedback-removed = The comments were removed.
feedback-replaced = These comments take the place of earlier ones from { $from }.
feedback-opened =
    { $n ->
        [0] What your teacher says is here.
        [one] The comment also stands beside what it is about.
       *[other] The { $n } comments also stand beside what they are about.
    }
feedback-nowhere = These are comments on the notebook “{ $title }” ({ $who }), handed in with { $n } entries in its history. That notebook is not in this browser. Open the file that you handed in first, then this one again. If it is among the deleted notebooks, put it back first.
feedback-damaged = The comments in “{ $name }” are damaged. Download the file again, or ask for it anew.
feedback-later = The comments in “{ $name }” were written with a later version of this page. Open them with that version.
feedback-too_large = The comments for “{ $name }” are more than this page takes: at most { $comments } comments, { $kib } KiB in all. Shorten them, or ask for shorter ones.

## Leaving a computer

leave-computer = This computer
leave-computers-own = mine
leave-computers-shared = shared with others
leave-hint = On a shared computer the page offers to remove everything once you have handed in, and a new window opens nobody’s notebook by itself.
leave-ask = Remove everything from this computer
leave-title = Remove everything from this computer?
leave-what =
    { $n ->
        [one] { $n } notebook will be removed from this browser, with all photos, trace files, comments and settings of this page. This cannot be undone.
       *[other] { $n } notebooks will be removed from this browser, with all photos, trace files, comments and settings of this page. This cannot be undone.
    }
leave-before = First check that the file to hand in is where you need it, and close other windows of this page. Downloaded files and the browser’s list of visited pages stay: the page cannot remove them.
leave-keep = Keep everything
leave-remove = Remove everything
leave-windows = Nothing was removed: another window of this page is open, and would store its notebook again. Close it first.
