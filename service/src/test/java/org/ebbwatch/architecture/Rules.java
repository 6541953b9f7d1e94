package org.ebbwatch.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.util.Set;

/** The rules of the house as functions of a package, so that a test can also point them at a package that breaks them. */
final class Rules {
    private static final Set<String> HAVE_A_CLOCK = Set.of("java.lang", "java.time");
    private static final Set<String> ASK_IT = Set.of("currentTimeMillis", "nanoTime", "now");

    private Rules() {}

    /** No framework and no database. */
    static ArchRule knowsNeitherFrameworkNorDatabase(String packages) {
        return noClasses()
                .that()
                .resideInAPackage(packages)
                .should()
                .dependOnClassesThat(resideInAnyPackage("io.micronaut..", "jakarta..", "java.sql..", "javax.sql.."))
                .allowEmptyShould(true);
    }

    /** Time is an argument. */
    static ArchRule asksNoClock(String packages) {
        DescribedPredicate<JavaAccess<?>> asking = DescribedPredicate.describe(
                "asks the time",
                access -> HAVE_A_CLOCK.contains(access.getTargetOwner().getPackageName())
                        && ASK_IT.contains(access.getName()));
        return noClasses()
                .that()
                .resideInAPackage(packages)
                .should()
                .accessTargetWhere(asking)
                .orShould()
                .dependOnClassesThat(type(Clock.class))
                .allowEmptyShould(true);
    }

    /** Of the service's own packages, depends on itself and these alone; the rig protocol's records are everybody's. */
    static ArchRule dependsOnNothingOfTheServiceBut(String packages, String... allowed) {
        DescribedPredicate<JavaClass> own = resideInAPackage("org.ebbwatch..")
                .and(not(resideInAPackage("org.ebbwatch.rig..")))
                .and(not(resideInAPackage(packages)));
        DescribedPredicate<JavaClass> others = allowed.length == 0 ? own : own.and(not(resideInAnyPackage(allowed)));
        return noClasses()
                .that()
                .resideInAPackage(packages)
                .should()
                .dependOnClassesThat(others)
                .allowEmptyShould(true);
    }

    /** Only these may use that. */
    static ArchRule isUsedOnlyBy(String used, String... users) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(users)
                .should()
                .dependOnClassesThat(resideInAPackage(used))
                .allowEmptyShould(true);
    }

    /** A library that one class keeps away from all others. */
    static ArchRule isUsedOnlyByClass(String used, String simpleName) {
        return classes()
                .that(DescribedPredicate.describe("use " + used, user -> user.getDirectDependenciesFromSelf().stream()
                        .anyMatch(it -> it.getTargetClass().getPackageName().startsWith(used))))
                .should()
                .haveSimpleName(simpleName)
                .allowEmptyShould(true);
    }
}
