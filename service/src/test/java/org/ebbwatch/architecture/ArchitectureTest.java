package org.ebbwatch.architecture;

import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.architecture.Rules.asksNoClock;
import static org.ebbwatch.architecture.Rules.dependsOnNothingOfTheServiceBut;
import static org.ebbwatch.architecture.Rules.isUsedOnlyBy;
import static org.ebbwatch.architecture.Rules.isUsedOnlyByClass;
import static org.ebbwatch.architecture.Rules.knowsNeitherFrameworkNorDatabase;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ArchitectureTest {
    private static final JavaClasses SERVICE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.ebbwatch");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "org.ebbwatch.time..",
                "org.ebbwatch.judge..",
                "org.ebbwatch.calibration..",
                "org.ebbwatch.alarm.book..",
                "org.ebbwatch.plan..",
                "org.ebbwatch.evening.rule..",
                "org.ebbwatch.intake.rule..",
                "org.ebbwatch.sizing..",
                "org.ebbwatch.morning..",
                "org.ebbwatch.trace.codec.."
            })
    void the_pure_packages_know_no_framework_no_database_and_no_clock(String packages) {
        knowsNeitherFrameworkNorDatabase(packages).check(SERVICE);
        asksNoClock(packages).check(SERVICE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time",
                "judge",
                "calibration",
                "acquire",
                "profile",
                "passage",
                "alarm",
                "evidence",
                "access",
                "plan",
                "evening",
                "morning",
                "life",
                "intake",
                "sizing",
                "paper",
                "csv",
                "handover",
                "archive",
                "web"
            })
    void the_packages_the_rules_speak_of_are_there(String feature) {
        assertThat(SERVICE).anyMatch(it -> it.getPackageName().startsWith("org.ebbwatch." + feature));
    }

    @Test
    void dependencies_run_one_way_along_a_readings_path() {
        dependsOnNothingOfTheServiceBut("org.ebbwatch.time..").check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.calibration..").check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.trace.codec..").check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.judge..").check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.acquire..", "org.ebbwatch.time..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.acquire..",
                        "org.ebbwatch.time..",
                        "org.ebbwatch.judge..",
                        "org.ebbwatch.calibration..",
                        "org.ebbwatch.trace..",
                        "org.ebbwatch.store..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.access..").check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.plan..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.judge..",
                        "org.ebbwatch.alarm.book..")
                .check(SERVICE);
    }

    @Test
    void what_makes_a_night_safe_to_leave_is_decided_from_facts_in_the_words_of_judge_and_alarm_book() {
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.evening.rule..", "org.ebbwatch.judge..", "org.ebbwatch.alarm.book..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.evening..",
                        "org.ebbwatch.calibration..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.alarm..",
                        "org.ebbwatch.acquire..",
                        "org.ebbwatch.time..",
                        "org.ebbwatch.judge..",
                        "org.ebbwatch.store..")
                .check(SERVICE);
    }

    @Test
    void the_morning_report_is_made_of_views_and_signs_of_life_of_pulses() {
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.morning..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.judge..",
                        "org.ebbwatch.plan..",
                        "org.ebbwatch.alarm..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.life..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.acquire..",
                        "org.ebbwatch.time..")
                .check(SERVICE);
        isUsedOnlyBy("com.sun.jna..", "org.ebbwatch.life..", "org.ebbwatch.sim..")
                .check(SERVICE);
    }

    @Test
    void a_cell_is_described_and_its_load_is_sized_without_a_rack() {
        dependsOnNothingOfTheServiceBut("org.ebbwatch.intake.rule..", "org.ebbwatch.judge.procedure..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.sizing..", "org.ebbwatch.intake.rule..", "org.ebbwatch.judge.procedure..")
                .check(SERVICE);
    }

    @Test
    void evidence_is_made_of_what_passages_tell_and_asks_no_clock() {
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.evidence..",
                        "org.ebbwatch.calibration..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.judge..",
                        "org.ebbwatch.trace.codec..",
                        "org.ebbwatch.paper..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.evidence.signature..").check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.evidence.json..").check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.evidence.report..",
                        "org.ebbwatch.evidence.json..",
                        "org.ebbwatch.judge..",
                        "org.ebbwatch.paper..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.evidence.container..", "org.ebbwatch.trace.codec..")
                .check(SERVICE);
        knowsNeitherFrameworkNorDatabase("org.ebbwatch.evidence.container..").check(SERVICE);
        asksNoClock("org.ebbwatch.evidence..").check(SERVICE);
    }

    @Test
    void what_leaves_the_house_is_made_of_evidence_on_paper_and_in_tables() {
        dependsOnNothingOfTheServiceBut("org.ebbwatch.paper..").check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.csv..").check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.handover..",
                        "org.ebbwatch.evidence..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.paper..",
                        "org.ebbwatch.csv..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.archive..",
                        "org.ebbwatch.evidence..",
                        "org.ebbwatch.intake..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.judge.procedure..",
                        "org.ebbwatch.store..",
                        "org.ebbwatch.trace.codec..",
                        "org.ebbwatch.csv..")
                .check(SERVICE);
        isUsedOnlyBy("org.apache.pdfbox..", "org.ebbwatch.paper..").check(SERVICE);
        isUsedOnlyByClass("com.google.zxing", "Labels").check(SERVICE);
        asksNoClock("org.ebbwatch.paper..").check(SERVICE);
        asksNoClock("org.ebbwatch.handover..").check(SERVICE);
        asksNoClock("org.ebbwatch.archive..").check(SERVICE);
    }

    @Test
    void the_web_sees_passages_alarms_and_a_desk_and_nothing_that_runs_them() {
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.web..",
                        "org.ebbwatch.calibration..",
                        "org.ebbwatch.passage..",
                        "org.ebbwatch.alarm..",
                        "org.ebbwatch.access..",
                        "org.ebbwatch.plan..",
                        "org.ebbwatch.evening..",
                        "org.ebbwatch.morning..",
                        "org.ebbwatch.intake..",
                        "org.ebbwatch.sizing..",
                        "org.ebbwatch.handover..",
                        "org.ebbwatch.archive..",
                        "org.ebbwatch.acquire..",
                        "org.ebbwatch.time..",
                        "org.ebbwatch.judge..")
                .check(SERVICE);
        isUsedOnlyBy("org.ebbwatch.web..", "org.ebbwatch.web..", "org.ebbwatch.cli..")
                .check(SERVICE);
    }

    @Test
    void no_feature_depends_on_itself_through_another() {
        slices().matching("org.ebbwatch.(*)..").should().beFreeOfCycles().check(SERVICE);
    }

    @Test
    void only_the_demo_knows_the_simulator() {
        isUsedOnlyBy("org.ebbwatch.sim..", "org.ebbwatch.sim..", "org.ebbwatch.demo..")
                .check(SERVICE);
    }

    @Test
    void the_libraries_of_outlets_are_known_to_their_outlets() {
        isUsedOnlyBy("jakarta.mail..", "org.ebbwatch.alarm.mail..").check(SERVICE);
        isUsedOnlyBy("com.hivemq..", "org.ebbwatch.alarm.mqtt..").check(SERVICE);
    }

    @Test
    void devices_are_read_without_knowing_what_becomes_of_their_readings() {
        dependsOnNothingOfTheServiceBut("org.ebbwatch.profile.text..", "org.ebbwatch.profile", "org.ebbwatch.acquire..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut(
                        "org.ebbwatch.profile.modbus..", "org.ebbwatch.profile", "org.ebbwatch.acquire..")
                .check(SERVICE);
        dependsOnNothingOfTheServiceBut("org.ebbwatch.profile", "org.ebbwatch.acquire..")
                .check(SERVICE);
        isUsedOnlyBy("com.digitalpetri..", "org.ebbwatch.profile.modbus..").check(SERVICE);
    }

    @Test
    void the_serial_library_is_known_to_one_class() {
        isUsedOnlyByClass("com.fazecast", "SerialPortLink").check(SERVICE);
    }

    @Nested
    class The_rules_themselves {
        private static final String IMPURE = "org.ebbwatch.architecture.impure..";
        private static final JavaClasses BROKEN =
                new ClassFileImporter().importPackages("org.ebbwatch.architecture.impure");

        @ParameterizedTest
        @ValueSource(strings = {"AsksTheMachine", "AsksTheWall", "HoldsAClock"})
        void notice_whoever_asks_a_clock(String culprit) {
            assertThat(complaint(asksNoClock(IMPURE))).contains(culprit);
        }

        @ParameterizedTest
        @ValueSource(strings = {"BeanContext", "java.sql.Connection"})
        void notice_a_framework_and_a_database(String stranger) {
            assertThat(complaint(knowsNeitherFrameworkNorDatabase(IMPURE))).contains(stranger);
        }

        @Test
        void notice_a_forbidden_neighbour() {
            assertThat(complaint(dependsOnNothingOfTheServiceBut(IMPURE))).contains("org.ebbwatch.judge.Phase");
            assertThat(complaint(isUsedOnlyBy("org.ebbwatch.judge..", "org.ebbwatch.passage..")))
                    .contains("KnowsTheFramework");
            assertThat(complaint(isUsedOnlyByClass("io.micronaut", "SomebodyElse")))
                    .contains("KnowsTheFramework");
        }

        private String complaint(ArchRule rule) {
            return rule.evaluate(BROKEN).getFailureReport().toString();
        }
    }
}
