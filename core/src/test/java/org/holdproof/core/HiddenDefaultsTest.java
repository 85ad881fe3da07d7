package org.holdproof.core;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.holdproof.core.quality.QualityModels;
import org.holdproof.core.rules.RuleLibrary;
import org.junit.jupiter.api.Test;

/** Only whoever asks for the built-in rules gets them: a default taken behind the caller's back hides a site's tables. */
class HiddenDefaultsTest {
    /** What is built in is asked for here. */
    private static final List<Class<?>> DOORS = List.of(RuleLibrary.class, QualityModels.class);

    @Test
    void nothingInCoreTakesTheBuiltInRulesByItself() {
        JavaClasses main = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .withImportOption(location -> !location.contains("test-classes"))
                .importPackages("org.holdproof.core");

        assertThat(main).isNotEmpty();
        assertThat(usersOfBuiltIn(main)).isEmpty();
    }

    @Test
    void aCallAndAReferenceAreBothNoticed() {
        assertThat(usersOfBuiltIn(new ClassFileImporter().importClasses(Calling.class, Referring.class)))
                .containsExactlyInAnyOrder("Calling", "Referring");
    }

    static final class Calling {
        final Supplier<Integer> taken = () -> RuleLibrary.builtIn().profiles().size();
    }

    static final class Referring {
        final Supplier<RuleLibrary> taken = RuleLibrary::builtIn;
    }

    private static List<String> usersOfBuiltIn(JavaClasses classes) {
        return classes.stream()
                .filter(from -> DOORS.stream().noneMatch(door -> from.getName().startsWith(door.getName())))
                .filter(HiddenDefaultsTest::takesBuiltIn)
                .map(JavaClass::getSimpleName)
                .toList();
    }

    private static boolean takesBuiltIn(JavaClass from) {
        Stream<JavaAccess<?>> accesses =
                Stream.concat(from.getMethodCallsFromSelf().stream(), from.getMethodReferencesFromSelf().stream());
        return accesses.anyMatch(access ->
                DOORS.stream().anyMatch(door -> access.getTargetOwner().isEquivalentTo(door))
                        && access.getTarget().getName().equals("builtIn"));
    }
}
