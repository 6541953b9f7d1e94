package org.ebbwatch.acquire;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** What event time, sessions and ports may know. */
@AnalyzeClasses(packages = "org.ebbwatch", importOptions = ImportOption.DoNotIncludeTests.class)
class BorderTest {

    @ArchTest
    static final ArchRule event_time_knows_the_jdk_alone = classes()
            .that()
            .resideInAPackage("org.ebbwatch.time")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("org.ebbwatch.time", "java.lang..", "java.util..");

    @ArchTest
    static final ArchRule event_time_asks_no_clock = noClasses()
            .that()
            .resideInAPackage("org.ebbwatch.time")
            .should()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(System.class, "currentTimeMillis");

    @ArchTest
    static final ArchRule sessions_have_no_thread_and_ask_no_clock = noClasses()
            .that()
            .haveSimpleName("BoardSession")
            .or()
            .haveSimpleName("ScanIntake")
            .or()
            .haveSimpleName("ScanAssembly")
            .or()
            .haveSimpleName("Requests")
            .or()
            .haveSimpleName("IdentityQuestion")
            .should()
            .dependOnClassesThat()
            .belongToAnyOf(Thread.class, System.class)
            .orShould()
            .dependOnClassesThat()
            .resideInAnyPackage("java.time..", "java.io..", "java.util.concurrent..");

    @ArchTest
    static final ArchRule one_class_knows_the_serial_library = noClasses()
            .that()
            .doNotHaveSimpleName("SerialPortLink")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.fazecast..");

    @ArchTest
    static final ArchRule acquisition_knows_no_framework = noClasses()
            .that()
            .resideInAPackage("org.ebbwatch.acquire")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("io.micronaut..", "jakarta..", "java.sql..");
}
