package org.ebbwatch.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.browser.Browsing.answer;
import static org.ebbwatch.browser.Browsing.enter;
import static org.ebbwatch.browser.Browsing.press;
import static org.ebbwatch.browser.Browsing.role;
import static org.ebbwatch.browser.Browsing.signIn;
import static org.ebbwatch.browser.Browsing.tabTo;
import static org.ebbwatch.browser.Browsing.type;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.ebbwatch.browser.Browsing.Screen;
import org.ebbwatch.evidence.BundleVerifier;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.handwork.Place;
import org.ebbwatch.handwork.QuietRack;
import org.ebbwatch.judge.Outcome.Wish;
import org.ebbwatch.judge.Phase;
import org.ebbwatch.passage.RackView.PassageView;
import org.ebbwatch.sim.cell.CellSpec;
import org.ebbwatch.sim.cell.SlowShare;
import org.ebbwatch.sim.scenario.BoardSpec;
import org.ebbwatch.sim.scenario.ChannelSpec;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The whole job, done at the page: from check-in to the release, at a desk and on a phone. */
class JobAtThePageTest {
    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    private static Browsing browsing;

    @TempDir
    private Path records;

    private Place place;
    private QuietRack rack;

    @BeforeAll
    static void startABrowser() {
        browsing = new Browsing();
    }

    @AfterAll
    static void closeTheBrowser() {
        if (browsing != null) {
            browsing.close();
        }
    }

    @BeforeEach
    void an_old_cell_lies_on_the_bench() {
        CellSpec cell = CellSpec.build("A-17", NMC, 2.0)
                .slowShare(new SlowShare(0.0012, 60))
                .done();
        BoardSpec board = BoardSpec.build("EB-1", List.of(ChannelSpec.switched(cell, 22), ChannelSpec.empty(22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        rack = place.rack();
    }

    @AfterEach
    void close() {
        browsing.leave();
        place.close();
    }

    private PassageView passage() {
        return rack.view().passages().get(0);
    }

    /** Lets time go on until the service asks for this. */
    private void comesBackWhenAskedTo(Wish wish, int atMostHours) {
        for (long waited = 0; waited <= atMostHours * HOUR; waited += 10 * MINUTE) {
            if (passage().standing().contains(wish)) {
                return;
            }
            rack.pass(10 * MINUTE);
        }
        throw new AssertionError("not asked for " + wish + ": " + passage().reason());
    }

    /** Presses what the view of the passage offers, once it shows the passage as it is now. */
    private void does(Page page, String act) {
        assertThat(page.locator(".acts"))
                .hasAttribute("data-sequence", Long.toString(passage().sequence()));
        press(page, AriaRole.BUTTON, act);
    }

    private static void takesIn(Page page, String condition) {
        press(page, AriaRole.LINK, "Check-in");
        page.getByLabel("condition: the one furthest down that applies").selectOption(condition);
        page.getByLabel("protection board").selectOption("none");
        page.getByLabel("tag, as written on the cell; empty: the next number").fill("A-17");
        page.getByLabel("rated capacity of one cell, Ah").fill("2.0");
        page.getByLabel("volts by a meter, at rest").fill("4.1");
        press(page, AriaRole.BUTTON, "Take in");
    }

    private static void checksIn(Page page) {
        takesIn(page, "intact");
        assertThat(page.locator(".verdict")).containsText("A-17 may go on the rack");
        press(page, AriaRole.BUTTON, "Name a load");
        assertThat(page.getByLabel("load, ohms")).not().hasValue("");
        page.getByLabel("load, ohms").fill("22");
        page.getByLabel("channel").selectOption("bench 0");
        press(page, AriaRole.BUTTON, "Check in");
        assertThat(page.locator("#said")).containsText("A-17 is checked in and watched.");
    }

    @Test
    void a_leaking_cell_gets_its_card_and_no_channel() {
        Page page = browsing.open(place, Screen.PHONE, ColorScheme.LIGHT);
        signIn(page, place);
        takesIn(page, "leaking or hissing");

        assertThat(page.locator(".verdict")).containsText("A-17 never goes on the rack");
        assertThat(page.locator(".verdict")).containsText("steel container");
        assertThat(page.locator(".on-rack")).hasCount(0);
        assertThat(rack.view().passages()).isEmpty();
        assertThat(browsing.complaints()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Screen.class)
    void from_check_in_to_release(Screen screen) throws IOException {
        Page page = browsing.open(place, screen, ColorScheme.LIGHT);
        signIn(page, place);
        checksIn(page);

        press(page, AriaRole.LINK, "Rack");
        comesBackWhenAskedTo(Wish.ASK_PUT_ON, 1);
        assertThat(page.locator("#needed")).containsText("Put the load on.");
        page.locator("#needed a").first().click();
        does(page, "Put on load");
        assertThat(page.locator("#deed")).containsText("hot enough to burn");
        answer(page, "Put on load");
        rack.pass(MINUTE);
        assertThat(passage().phase()).isEqualTo(Phase.DRAIN);
        assertThat(page.locator(".single [aria-current]")).hasText("drain");

        comesBackWhenAskedTo(Wish.ASK_TIE_OFF, 120);
        assertThat(page.locator(".single [aria-current]")).hasText("rest");
        assertThat(page.locator(".past")).containsText("drain");
        rack.hands().bond(0);
        does(page, "Tied off");
        page.getByLabel("No spark").check();
        answer(page, "Tied off");
        assertThat(passage().phase()).isEqualTo(Phase.TIE_OFF);

        comesBackWhenAskedTo(Wish.ASK_PART, 26);
        rack.hands().part(0);
        does(page, "Bond parted");
        answer(page, "Bond parted");
        comesBackWhenAskedTo(Wish.ASK_RELEASE, 6);
        does(page, "Release");
        assertThat(page.locator("#deed")).containsText("never charged again");
        answer(page, "Release");
        assertThat(passage().phase()).isEqualTo(Phase.RELEASED);

        press(page, AriaRole.LINK, "Released");
        assertThat(page.locator("#view-over table")).containsText("A-17");
        page.getByLabel("choose A-17").check();
        Download papers = page.waitForDownload(() -> press(page, AriaRole.LINK, "Hand over 1 cell"));
        verifies(papers.path());
        assertThat(browsing.complaints()).isEmpty();
    }

    @Test
    void from_check_in_to_release_without_a_mouse() {
        Page page = browsing.open(place, Screen.DESK, ColorScheme.DARK);
        enter(page, "Sign in");
        page.getByLabel("the operator's token").waitFor();
        type(page, "the operator's token", place.token());
        page.keyboard().press("Enter");
        assertThat(role(page, AriaRole.LINK, "Signed in")).isVisible();

        enter(page, "Check-in");
        page.getByLabel("protection board").waitFor();
        type(page, "condition: the one furthest down that applies", "intact");
        type(page, "protection board", "none");
        type(page, "tag, as written on the cell; empty: the next number", "A-17");
        type(page, "rated capacity of one cell, Ah", "2.0");
        type(page, "volts by a meter, at rest", "4.1");
        enter(page, "Take in");
        page.locator(".on-rack").waitFor();
        type(page, "load, ohms", "22");
        enter(page, "Check in");
        assertThat(page.locator("#said")).containsText("A-17 is checked in and watched.");

        comesBackWhenAskedTo(Wish.ASK_PUT_ON, 1);
        enter(page, "Rack");
        page.locator("#needed a").first().waitFor();
        enter(page, "bench 0, A-17");
        doesByKeys(page, "Put on load");
        rack.pass(MINUTE);
        comesBackWhenAskedTo(Wish.ASK_TIE_OFF, 120);
        rack.hands().bond(0);
        doesByKeys(page, "Tied off", "No spark");
        comesBackWhenAskedTo(Wish.ASK_PART, 26);
        rack.hands().part(0);
        doesByKeys(page, "Bond parted");
        comesBackWhenAskedTo(Wish.ASK_RELEASE, 6);
        doesByKeys(page, "Release");
        assertThat(passage().phase()).isEqualTo(Phase.RELEASED);
    }

    /** Does what the view of the passage offers; {@code choices} are made in the question. */
    private void doesByKeys(Page page, String act, String... choices) {
        assertThat(page.locator(".acts"))
                .hasAttribute("data-sequence", Long.toString(passage().sequence()));
        enter(page, act);
        assertThat(page.locator("#deed")).isVisible();
        for (String choice : choices) {
            tabTo(page, choice);
            page.keyboard().press("Space");
        }
        enter(page, act);
        assertThat(page.locator("#deed")).isHidden();
    }

    /** The bundle in a hand-over is whole, signed, and gives the same verdict when it is judged again. */
    private void verifies(Path handOver) throws IOException {
        Path bundle = records.resolve("downloaded.ebb.zip");
        try (var zip = new ZipFile(handOver.toFile())) {
            ZipEntry its = zip.stream()
                    .filter(entry -> entry.getName().endsWith(".ebb.zip"))
                    .findFirst()
                    .orElseThrow();
            Files.copy(zip.getInputStream(its), bundle, StandardCopyOption.REPLACE_EXISTING);
        }
        assertThat(BundleVerifier.verify(bundle))
                .isInstanceOfSatisfying(
                        Judged.class, judged -> assertThat(judged.again()).isEqualTo(new Again.Same()));
    }
}
