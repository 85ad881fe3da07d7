package org.holdproof.core.rules;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.core.input.JsonValue;
import org.holdproof.core.input.StrictJson;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.loading.GrowthFiles;
import org.holdproof.core.rules.loading.HandbookFiles;
import org.holdproof.core.rules.loading.LethalityFiles;
import org.holdproof.core.rules.loading.LimitFiles;
import org.holdproof.core.rules.loading.ProfileFiles;
import org.holdproof.core.rules.loading.QualityFiles;
import org.holdproof.core.rules.loading.RuleFiles;
import org.holdproof.core.rules.loading.Sources;
import org.holdproof.core.rules.loading.TableFiles;

/**
 * Every rule a record can be judged by: the built-in ones, with a site's own laid over them, or exactly those an
 * archive carries. Immutable; all of it was checked when it was loaded.
 */
public final class RuleLibrary {
    /** The groups of rules that are words first. */
    public static final List<String> WRITTEN_GROUPS = List.of("measurement", "records", "packaging", "cooking");

    private final TableFiles files;
    private final String edition;
    private final Sources sources;
    private final RuleSets rules;
    private final Map<String, AuthorityProfile> profiles;
    private final QualityTables quality;

    private RuleLibrary(TableFiles files) throws UnreadableInputException {
        this.files = files;
        edition = editionOf(files);
        sources = Sources.read(files);
        rules = rulesOf(files, sources);
        profiles = new ProfileFiles(files, rules).read();
        quality = new QualityFiles(files, sources).read();
    }

    private static RuleSets rulesOf(TableFiles files, Sources sources) throws UnreadableInputException {
        RuleFiles rules = new RuleFiles(files, sources);
        LimitFiles limits = new LimitFiles(files, sources);
        HandbookFiles handbook = new HandbookFiles(files, sources);
        GrowthFiles growth = new GrowthFiles(files, sources);
        RuleSet<GrowthFact> facts = growth.facts();
        RuleSet<LethalityTable> tables = new LethalityFiles(files, sources).read();
        return new RuleSets(List.of(
                tables,
                rules.kinetics(),
                rules.cooling(),
                rules.holding(),
                rules.reheating(tables),
                limits.humidity(),
                limits.ovens(),
                limits.gaps(),
                limits.parasites(),
                limits.surfaces(),
                limits.allowances(),
                limits.timeLimits(),
                limits.exposures(),
                limits.shelfLives(),
                rules.written(WRITTEN_GROUPS),
                handbook.growthLimits(),
                handbook.bathTimes(),
                handbook.boilingPoints(),
                facts,
                growth.models(facts),
                growth.lags(),
                growth.deathTimes()));
    }

    /** The built-in tables, loaded once. */
    public static RuleLibrary builtIn() {
        return BuiltIn.LIBRARY;
    }

    /** Loads on first use, and only once. */
    private static final class BuiltIn {
        static final RuleLibrary LIBRARY = load();

        private static RuleLibrary load() {
            try {
                return new RuleLibrary(TableFiles.builtIn());
            } catch (UnreadableInputException e) {
                throw new IllegalStateException("the built-in tables of this build are damaged: " + e.getMessage(), e);
            }
        }
    }

    /**
     * The built-in tables with a site's own folder laid over them, file by file: the same path replaces a file, a name
     * with a suffix ({@code cooling-site.csv}, {@code sources-site.json}, {@code lethality/index-site.csv}) and a new
     * file under {@code lethality} or {@code authorities} add to the rest.
     *
     * @throws IOException if the folder cannot be read
     * @throws UnreadableInputException if what it holds cannot be used; says where and what to do
     */
    public static RuleLibrary withSite(Path folder) throws IOException, UnreadableInputException {
        return new RuleLibrary(builtIn().files.overlaidBy(folder));
    }

    /**
     * Exactly the tables of an {@link #archive()}, whatever is built in.
     *
     * @throws UnreadableInputException if it is damaged or no such archive
     */
    public static RuleLibrary fromArchive(byte[] zip) throws UnreadableInputException {
        return new RuleLibrary(TableFiles.fromArchive(zip));
    }

    /** All table files as a zip: the same bytes for the same tables. */
    public byte[] archive() {
        return files.archive();
    }

    /** The edition's name, whether a site's own files are in it, and the digest of all files. */
    public String edition() {
        return edition;
    }

    private static String editionOf(TableFiles files) throws UnreadableInputException {
        JsonValue json = StrictJson.read(TableFiles.EDITION, files.bytes(TableFiles.EDITION), "the list of tables");
        json.requireFields(List.of("edition", "changes", "files"), List.of());
        String name = json.field("edition").text();
        String own = "";
        if (files.has(TableFiles.SITE)) {
            JsonValue site =
                    StrictJson.read(TableFiles.SITE, files.bytes(TableFiles.SITE), "the list of a site's tables");
            own = " with the site's own "
                    + String.join(", ", site.field("files").texts());
        }
        return name + own + " (SHA-256 " + files.digest() + ")";
    }

    /** The profile a batch record names. */
    public Optional<AuthorityProfile> profile(String id) {
        return Optional.ofNullable(profiles.get(id));
    }

    public List<AuthorityProfile> profiles() {
        return List.copyOf(profiles.values());
    }

    /**
     * The rules of one kind: {@code library.rules(CoolingRule.class).find("US-FDA-COOL-A")}.
     *
     * @throws IllegalArgumentException if no table holds rules of that kind
     */
    public <T extends Rule> RuleSet<T> rules(Class<T> kind) {
        return rules.of(kind);
    }

    /** The rules of every kind, in the order they are listed in. */
    public List<RuleSet<? extends Rule>> rules() {
        return rules.all();
    }

    /**
     * The rules of one group that are words first.
     *
     * @param group one of {@link #WRITTEN_GROUPS}
     * @throws IllegalArgumentException if there is no such group
     */
    public List<WrittenRule> writtenRules(String group) {
        if (!WRITTEN_GROUPS.contains(group)) {
            throw new IllegalArgumentException("no group " + group + "; there are " + WRITTEN_GROUPS);
        }
        return rules.of(WrittenRule.class).all().stream()
                .filter(rule -> rule.group().equals(group))
                .toList();
    }

    /** What is published about weight, tenderness, colour and yield; nothing is judged by it. */
    public QualityTables quality() {
        return quality;
    }

    /** The documents the rules come from. */
    public Collection<Source> sources() {
        return sources.all();
    }
}
