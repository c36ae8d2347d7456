//! The real page, packed and served, driven in a headless browser, one test after the other.
//!
//! Told by variables where things are: `SLOPE_URL` (the page), `SLOPE_DIST` (its folder), `SLOPE_PARTS` (its modules one by
//! one, for the style guide), `CHROMIUM` with `CHROMEDRIVER`, or in their place `FIREFOX` with `GECKODRIVER`, or `WEBKITDRIVER`
//! alone; and by `SLOPE_SLOWING`, if at all, how many times slower the page shall run, which brings out tests that
//! hang on its speed. Arguments, if any, choose the tests whose names hold one of them; `--long` stands for the long ones in
//! place of the others; `--pictures LANGUAGE FOLDER` takes the pictures of the help instead. Prints a line a test with its time, and `N passed, N failed` alone on the last line.

mod opening;
mod looks;
mod hands;
mod traces;
mod uncertainty;
mod access;
mod languages;
mod help_pictures;
mod pictures;
mod picture_doubts;
mod video;
mod picture_zoom;
mod picture_ends;
mod file_store;
mod cautions;
mod cells;
mod class;
mod data_sets;
mod faults;
mod feedback;
mod colleagues;
mod files;
mod handout;
mod help;
mod keyboard;
mod kinds;
mod late;
mod leaving;
mod merging;
mod notebooks;
mod notes;
mod offline;
mod plan;
mod plots;
mod points;
mod posted;
mod saving;
mod seal;
mod sight;
mod sheets;
mod job;
mod screenshots;
mod storage;
mod stores;
mod french;
mod french_class;
mod french_told;
mod history;
mod watching;
mod windows;
mod interleaved;
mod french_alarms;

use std::env;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;

use anyhow::{Context, Result};
use page_tests::{bench, downloads, driver, engine, home, host, names, page, stage};

use crate::driver::{Driver, Skipped};
use crate::engine::Installed;
use crate::stage::Stage;

type Test = fn(&Stage) -> Result<()>;

const TESTS: [(&str, Test); 213] = [
    ("opens_on_the_demo", opening::opens_on_the_demo),
    ("early_paste_is_told", late::early_paste_is_told),
    ("early_drop_is_taken", late::early_drop_is_taken),
    ("early_press_shows_the_picture", late::early_press_shows_the_picture),
    ("a_section_that_fails_is_tried_again", late::a_section_that_fails_is_tried_again),
    ("a_section_waits_for_its_look", late::a_section_waits_for_its_look),
    ("files_are_asked_for_by_keyboard", keyboard::files_are_asked_for_by_keyboard),
    ("from_blank_notebook_to_bundle", keyboard::from_blank_notebook_to_bundle),
    ("from_blank_notebook_to_bundle_by_pointer", job::from_blank_notebook_to_bundle_by_pointer),
    ("from_blank_notebook_to_bundle_by_touch", job::from_blank_notebook_to_bundle_by_touch),
    ("cautions_are_read_by_name", cautions::cautions_are_read_by_name),
    ("invisible_beams_and_local_rules_come_first", cautions::invisible_beams_and_local_rules_come_first),
    ("paste_fills_rows", cells::paste_fills_rows),
    ("mistakes_are_told_at_the_cell", cells::mistakes_are_told_at_the_cell),
    ("an_uncertainty_is_a_limit_or_a_standard_one", kinds::an_uncertainty_is_a_limit_or_a_standard_one),
    ("a_component_and_a_cell_hold_a_limit", kinds::a_component_and_a_cell_hold_a_limit),
    ("what_is_treated_as_exact_is_told", kinds::what_is_treated_as_exact_is_told),
    ("a_beam_at_an_angle_is_asked_for", kinds::a_beam_at_an_angle_is_asked_for),
    ("an_old_notebook_keeps_what_it_meant", kinds::an_old_notebook_keeps_what_it_meant),
    ("a_splice_counts_as_its_ruler", faults::a_splice_counts_as_its_ruler),
    ("a_repair_is_offered_and_taken_back", faults::a_repair_is_offered_and_taken_back),
    ("an_entry_out_of_range_is_marked", faults::an_entry_out_of_range_is_marked),
    ("a_refusal_stands_once", faults::a_refusal_stands_once),
    ("signs_of_notices_are_no_marks_of_rails", faults::signs_of_notices_are_no_marks_of_rails),
    ("a_later_notebook_is_left_untouched", faults::a_later_notebook_is_left_untouched),
    ("a_press_that_leaves_a_text_is_not_lost", cells::a_press_that_leaves_a_text_is_not_lost),
    ("undo_and_redo", cells::undo_and_redo),
    ("struck_rows_stay_in_sight", cells::struck_rows_stay_in_sight),
    ("what_happened_is_noted", notes::what_happened_is_noted),
    ("rows_follow_a_renamed_rail", notes::rows_follow_a_renamed_rail),
    ("plan_follows_its_positions", plan::plan_follows_its_positions),
    ("handles_move_positions", plan::handles_move_positions),
    ("next_reading_is_taken", plan::next_reading_is_taken),
    ("rehearsal_is_a_notebook", plan::rehearsal_is_a_notebook),
    ("saved_outlives_a_reload", saving::saved_outlives_a_reload),
    ("saved_outlives_a_kill", saving::saved_outlives_a_kill),
    ("a_snapshot_that_is_lost_is_not_missed", saving::a_snapshot_that_is_lost_is_not_missed),
    ("a_clock_set_back_loses_nothing", saving::a_clock_set_back_loses_nothing),
    ("opens_again_on_the_notebook_in_hand", saving::opens_again_on_the_notebook_in_hand),
    ("a_flow_of_typing_is_saved", saving::a_flow_of_typing_is_saved),
    ("a_flow_of_typing_is_one_step", saving::a_flow_of_typing_is_one_step),
    ("works_with_site_data_off", storage::works_with_site_data_off),
    ("works_without_storage", storage::works_without_storage),
    ("starts_where_the_database_never_answers", storage::starts_where_the_database_never_answers),
    ("a_database_that_hangs_is_told", storage::a_database_that_hangs_is_told),
    ("starts_without_broadcast_channels", storage::starts_without_broadcast_channels),
    ("a_damaged_list_loses_no_notebook", storage::a_damaged_list_loses_no_notebook),
    ("the_browser_is_asked_to_keep_what_is_stored", storage::the_browser_is_asked_to_keep_what_is_stored),
    ("storing_is_tried_again", storage::storing_is_tried_again),
    (
        "a_longer_snapshot_hides_nothing_that_was_saved",
        stores::a_longer_snapshot_hides_nothing_that_was_saved,
    ),
    ("an_emptied_journal_is_filled_again", stores::an_emptied_journal_is_filled_again),
    (
        "what_is_typed_while_another_notebook_opens_stays",
        stores::what_is_typed_while_another_notebook_opens_stays,
    ),
    (
        "comments_stay_where_the_journal_alone_has_their_notebook",
        stores::comments_stay_where_the_journal_alone_has_their_notebook,
    ),
    (
        "a_window_removes_no_comments_that_it_does_not_know",
        feedback::a_window_removes_no_comments_that_it_does_not_know,
    ),
    ("works_offline_after_the_first_visit", offline::works_offline_after_the_first_visit),
    ("a_newer_version_waits_until_it_is_taken", offline::a_newer_version_waits_until_it_is_taken),
    ("alarms_are_in_sight", storage::alarms_are_in_sight),
    ("a_window_opens_the_notebook_it_is_meant_for", windows::a_window_opens_the_notebook_it_is_meant_for),
    ("a_takeover_is_taken_back", windows::a_takeover_is_taken_back),
    ("what_a_window_loses_is_kept_apart", windows::what_a_window_loses_is_kept_apart),
    ("a_page_shown_again_has_its_turn", windows::a_page_shown_again_has_its_turn),
    ("two_windows_without_locks", windows::two_windows_without_locks),
    ("the_journal_takes_edits_of_one_window", windows::the_journal_takes_edits_of_one_window),
    ("a_window_closed_while_it_parts_loses_nothing", windows::a_window_closed_while_it_parts_loses_nothing),
    ("a_window_closed_behind_its_turn_loses_nothing", windows::a_window_closed_behind_its_turn_loses_nothing),
    ("the_last_letters_outlive_a_reload", windows::the_last_letters_outlive_a_reload),
    ("no_interleaving_loses_an_edit", interleaved::no_interleaving_loses_an_edit),
    ("a_turn_that_is_heard_of_late_takes_nothing", interleaved::a_turn_that_is_heard_of_late_takes_nothing),
    ("list_of_notebooks", notebooks::list_of_notebooks),
    ("notebooks_dropped_together_are_all_there", notebooks::notebooks_dropped_together_are_all_there),
    ("two_tabs", notebooks::two_tabs),
    ("the_line_is_in_sight_while_typing", sight::the_line_is_in_sight_while_typing),
    ("twelve_rows_need_no_scrolling", sight::twelve_rows_need_no_scrolling),
    ("a_phone_has_room_for_its_number_pad", sight::a_phone_has_room_for_its_number_pad),
    ("the_strip_opens_at_a_tap", sight::the_strip_opens_at_a_tap),
    ("cells_are_gone_through_by_arrows", sight::cells_are_gone_through_by_arrows),
    ("a_row_is_seen_whole", sight::a_row_is_seen_whole),
    ("the_focus_is_kept", sight::the_focus_is_kept),
    ("nothing_moves", sight::nothing_moves),
    ("a_newcomer_finds_the_way", sight::a_newcomer_finds_the_way),
    ("a_notice_of_the_row_in_hand_is_in_sight", sight::a_notice_of_the_row_in_hand_is_in_sight),
    ("a_described_bench_folds", sight::a_described_bench_folds),
    ("leaves_are_turned", sight::leaves_are_turned),
    ("leaves_open_by_their_address", sight::leaves_open_by_their_address),
    ("the_run_is_played_back", watching::the_run_is_played_back),
    ("the_history_is_read", history::the_history_is_read),
    ("a_history_from_elsewhere_is_read", history::a_history_from_elsewhere_is_read),
    ("the_history_keeps_the_focus", history::the_history_keeps_the_focus),
    ("the_history_fits_a_phone", history::the_history_fits_a_phone),
    ("the_run_is_played_back_from_an_entry", history::the_run_is_played_back_from_an_entry),
    ("a_step_is_saved", watching::a_step_is_saved),
    ("the_wall_follows", watching::the_wall_follows),
    ("the_wall_keeps_the_seal", watching::the_wall_keeps_the_seal),
    ("the_run_is_at_hand_beside_the_line", watching::the_run_is_at_hand_beside_the_line),
    ("printing_prints_the_report", watching::printing_prints_the_report),
    ("the_sheets_are_seen_before", sheets::the_sheets_are_seen_before),
    ("a_seal_covers_the_sheets", sheets::a_seal_covers_the_sheets),
    ("plots_are_saved", watching::plots_are_saved),
    ("keys_are_listed", watching::keys_are_listed),
    ("a_plot_is_looked_at_closely", plots::a_plot_is_looked_at_closely),
    ("a_mark_says_whose_it_is", plots::a_mark_says_whose_it_is),
    ("readings_are_walked_on_the_plots", plots::readings_are_walked_on_the_plots),
    ("the_report_goes_on_in_latex_and_markdown", watching::the_report_goes_on_in_latex_and_markdown),
    ("points_stand_in_a_table", points::points_stand_in_a_table),
    ("points_are_walked", points::points_are_walked),
    ("drawings_stand_in_tables", points::drawings_stand_in_tables),
    ("dark_light_and_narrow", looks::dark_light_and_narrow),
    ("contrast_is_chosen", access::contrast_is_chosen),
    ("results_are_said_once", access::results_are_said_once),
    ("nothing_moves_by_itself", looks::nothing_moves_by_itself),
    ("nothing_is_cut_off_when_enlarged", looks::nothing_is_cut_off_when_enlarged),
    ("the_style_guide_shows_the_pieces", screenshots::the_style_guide_shows_the_pieces),
    ("the_language_is_chosen", languages::the_language_is_chosen),
    ("the_page_speaks_french", languages::the_page_speaks_french),
    ("other_states_speak_french", languages::other_states_speak_french),
    ("what_comes_later_speaks_french", french::what_comes_later_speaks_french),
    ("mistakes_are_told_in_french", languages::mistakes_are_told_in_french),
    ("a_report_has_its_own_language", languages::a_report_has_its_own_language),
    ("what_is_asked_of_a_row_is_french", french::what_is_asked_of_a_row_is_french),
    ("plan_and_rehearsal_are_french", french::plan_and_rehearsal_are_french),
    ("alarms_are_french", french_alarms::alarms_are_french),
    ("losses_are_told_in_french", french_alarms::losses_are_told_in_french),
    ("refused_files_are_french", french::refused_files_are_french),
    ("tables_are_taken_away_in_french", french::tables_are_taken_away_in_french),
    ("notices_and_questions_are_french", french::notices_and_questions_are_french),
    ("data_sets_are_french", french_class::data_sets_are_french),
    ("data_sets_of_photos_and_traces_are_french", french_class::data_sets_of_photos_and_traces_are_french),
    ("comments_of_two_teachers_are_french", french_class::comments_of_two_teachers_are_french),
    ("comments_are_written_in_french", french_class::comments_are_written_in_french),
    ("doubted_photos_are_french", french::doubted_photos_are_french),
    ("notes_ends_and_videos_are_french", french::notes_ends_and_videos_are_french),
    ("layouts_and_set_up_photos_are_french", french::layouts_and_set_up_photos_are_french),
    ("handing_in_is_french", french::handing_in_is_french),
    ("the_list_of_notebooks_is_french", french_told::the_list_of_notebooks_is_french),
    ("what_is_told_in_passing_is_french", french_told::what_is_told_in_passing_is_french),
    ("trials_are_french", french_told::trials_are_french),
    ("photos_and_traces_are_asked_about_in_french", french_told::photos_and_traces_are_asked_about_in_french),
    ("every_kind_of_component_is_french", french_told::every_kind_of_component_is_french),
    ("ways_to_hand_out_are_french", french_told::ways_to_hand_out_are_french),
    ("traces_give_c", traces::traces_give_c),
    ("layouts_are_corrected", traces::layouts_are_corrected),
    ("layout_numbers_are_read_as_typed", traces::layout_numbers_are_read_as_typed),
    ("a_step_is_stated_after_a_refusal", traces::a_step_is_stated_after_a_refusal),
    ("a_run_is_stopped", traces::a_run_is_stopped),
    ("bad_traces_are_named", traces::bad_traces_are_named),
    ("a_row_says_how_it_came", cells::a_row_says_how_it_came),
    ("budget_adds_up", uncertainty::budget_adds_up),
    ("asking_changes_nothing", uncertainty::asking_changes_nothing),
    ("trials_repeat", uncertainty::trials_repeat),
    ("trials_can_be_stopped", uncertainty::trials_can_be_stopped),
    ("trials_do_without_workers", uncertainty::trials_do_without_workers),
    ("pictures_give_c", pictures::pictures_give_c),
    ("marks_are_moved", pictures::marks_are_moved),
    ("marks_wait_to_be_accepted", pictures::marks_wait_to_be_accepted),
    ("doubted_marks_are_looked_at", picture_doubts::doubted_marks_are_looked_at),
    ("checks_go_with_corners", picture_doubts::checks_go_with_corners),
    ("a_dropped_picture_asks", picture_doubts::a_dropped_picture_asks),
    ("a_photo_is_looked_at_closely", picture_zoom::a_photo_is_looked_at_closely),
    ("pictures_rest", pictures::pictures_rest),
    ("bad_pictures_are_refused", pictures::bad_pictures_are_refused),
    ("pictures_are_told_by_their_bytes", pictures::pictures_are_told_by_their_bytes),
    ("ends_of_edges_give_their_level", picture_ends::ends_of_edges_give_their_level),
    ("a_frame_of_a_video_is_a_photo", video::a_frame_of_a_video_is_a_photo),
    ("files_of_no_notebook_are_removed", file_store::files_of_no_notebook_are_removed),
    ("without_a_database_it_says_so", file_store::without_a_database_it_says_so),
    ("seal_hides_and_opens", seal::seal_hides_and_opens),
    ("a_hand_out_is_prepared_and_handed_in", handout::a_hand_out_is_prepared_and_handed_in),
    ("a_shared_computer_keeps_nothing", leaving::a_shared_computer_keeps_nothing),
    ("a_claimed_teachers_layer_is_refused", handout::a_claimed_teachers_layer_is_refused),
    ("a_text_of_ten_megabytes_stops_nothing", handout::a_text_of_ten_megabytes_stops_nothing),
    ("a_class_misses_what_was_asked_for", handout::a_class_misses_what_was_asked_for),
    ("texts_of_a_hand_out_have_marks", handout::texts_of_a_hand_out_have_marks),
    ("a_link_holds_a_hand_out", posted::a_link_holds_a_hand_out),
    ("hostile_links_are_refused", posted::hostile_links_are_refused),
    (
        "a_hand_out_opens_from_site_and_from_one_html_file",
        posted::a_hand_out_opens_from_site_and_from_one_html_file,
    ),
    ("one_html_file_holds_twelve_photos", posted::one_html_file_holds_twelve_photos),
    ("bad_files_are_refused", files::bad_files_are_refused),
    ("one_file_from_disk", files::one_file_from_disk),
    ("the_one_file_speaks_french", files::the_one_file_speaks_french),
    ("a_damaged_one_file_says_so", files::a_damaged_one_file_says_so),
    ("each_student_has_a_data_set", data_sets::each_student_has_a_data_set),
    ("a_data_set_of_traces_is_measured", data_sets::a_data_set_of_traces_is_measured),
    ("a_data_set_of_photographs_is_given", data_sets::a_data_set_of_photographs_is_given),
    ("traces_need_no_time_base_of_the_plan", data_sets::traces_need_no_time_base_of_the_plan),
    ("data_sets_hold_the_photo_of_the_set_up", data_sets::data_sets_hold_the_photo_of_the_set_up),
    ("a_class_is_looked_through", class::a_class_is_looked_through),
    ("a_merge_explains_the_same_readings", merging::a_merge_explains_the_same_readings),
    ("a_class_is_for_everyone", class::a_class_is_for_everyone),
    ("reading_a_class_is_stopped", class::reading_a_class_is_stopped),
    ("a_mark_that_all_misread_is_named", class::a_mark_that_all_misread_is_named),
    ("budgets_and_notices_of_a_class_are_counted", class::budgets_and_notices_of_a_class_are_counted),
    ("comments_go_back_beside_what_they_are_about", feedback::comments_go_back_beside_what_they_are_about),
    ("comments_of_two_teachers_stand_side_by_side", feedback::comments_of_two_teachers_stand_side_by_side),
    (
        "comments_of_a_colleague_stand_beside_ones_own",
        colleagues::comments_of_a_colleague_stand_beside_ones_own,
    ),
    ("whose_comments_are_ones_own_is_asked", colleagues::whose_comments_are_ones_own_is_asked),
    ("only_one_name_is_ones_own", colleagues::only_one_name_is_ones_own),
    ("another_name_is_told", colleagues::another_name_is_told),
    ("hostile_comments_are_refused", feedback::hostile_comments_are_refused),
    ("comments_are_for_everyone", feedback::comments_are_for_everyone),
    ("partners_merge_their_notebooks", merging::partners_merge_their_notebooks),
    ("what_is_no_partners_is_refused", merging::what_is_no_partners_is_refused),
    ("a_dropped_notebook_is_merged", merging::a_dropped_notebook_is_merged),
    ("many_differences_are_chosen_together", merging::many_differences_are_chosen_together),
    ("merging_is_for_everyone", merging::merging_is_for_everyone),
    ("help_is_at_hand", help::help_is_at_hand),
    ("the_one_file_holds_its_help", help::the_one_file_holds_its_help),
    ("the_tour_leads_through_the_demo", help::the_tour_leads_through_the_demo),
    ("everything_has_a_name", access::everything_has_a_name),
    ("targets_are_large_enough", access::targets_are_large_enough),
    ("frequent_targets_are_large", access::frequent_targets_are_large),
    ("no_rule_is_broken", access::no_rule_is_broken),
    ("no_rule_is_broken_by_traces", access::no_rule_is_broken_by_traces),
    ("forced_colours_are_told_apart", access::forced_colours_are_told_apart),
];

/// Those at full length of which [`TESTS`] holds a sample, one larger than any bench, and pictures for eyes.
const LONG: [(&str, Test); 5] = [
    ("every_leaf_and_state_is_shot", screenshots::every_leaf_and_state_is_shot),
    ("two_hundred_kills_lose_nothing", saving::two_hundred_kills_lose_nothing),
    ("forty_deaths_open_on_the_notebook_in_hand", saving::forty_deaths_open_on_the_notebook_in_hand),
    ("a_thousand_steps_lose_no_edit", interleaved::a_thousand_steps_lose_no_edit),
    ("ten_thousand_rows_open", files::ten_thousand_rows_open),
];

fn main() -> Result<ExitCode> {
    let stage = Stage {
        driver: Driver::start(Installed::told(|name| env::var_os(name))?)?,
        address: env::var("SLOPE_URL").context("SLOPE_URL says where the page is served")?,
        dist: path("SLOPE_DIST")?,
        parts: env::var("SLOPE_PARTS").ok(),
        slowing: env::var("SLOPE_SLOWING")
            .map_or(Ok(1.0), |times| times.parse())
            .context("SLOPE_SLOWING is a number")?,
    };
    let arguments: Vec<String> = env::args().skip(1).collect();
    if let [flag, language, folder] = arguments.as_slice()
        && flag == "--pictures"
    {
        help_pictures::take(&stage, language, Path::new(folder))?;
        return Ok(ExitCode::SUCCESS);
    }
    if let [flag, file] = arguments.as_slice()
        && flag == "--open-notebook"
    {
        help_pictures::take_open_notebook(&stage, Path::new(file))?;
        return Ok(ExitCode::SUCCESS);
    }
    let (options, wanted): (Vec<String>, Vec<String>) =
        arguments.into_iter().partition(|argument| argument.starts_with("--"));
    let tests: &[(&str, Test)] = if options.iter().any(|option| option == "--long") { &LONG } else { &TESTS };
    let chosen = |name: &str| wanted.is_empty() || wanted.iter().any(|part| name.contains(part.as_str()));
    let (mut passed, mut failed) = (0, 0);
    for (name, test) in tests.iter().filter(|(name, _)| chosen(name)) {
        let begun = Instant::now();
        let outcome = test(&stage);
        let time = begun.elapsed().as_secs_f64();
        match outcome {
            Ok(()) => {
                passed += 1;
                println!("test {name} ... ok <{time:.3}s>");
            }
            Err(why) if why.is::<Skipped>() => println!("test {name} ... skipped: {why}"),
            Err(why) => {
                failed += 1;
                println!("test {name} ... FAILED <{time:.3}s> ({why:#})");
            }
        }
    }
    println!("\n{passed} passed, {failed} failed");
    Ok(if failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn path(variable: &str) -> Result<PathBuf> {
    env::var_os(variable).map(PathBuf::from).with_context(|| format!("{variable} is not set"))
}
