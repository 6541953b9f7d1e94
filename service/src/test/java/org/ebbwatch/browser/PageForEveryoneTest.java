package org.ebbwatch.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.ebbwatch.browser.Browsing.answer;
import static org.ebbwatch.browser.Browsing.press;
import static org.ebbwatch.browser.Browsing.signIn;
import static org.ebbwatch.sim.cell.Chemistry.NMC;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.ebbwatch.alarm.book.AlarmState;
import org.ebbwatch.browser.Browsing.Screen;
import org.ebbwatch.handwork.Client;
import org.ebbwatch.handwork.Place;
import org.ebbwatch.handwork.QuietRack;
import org.ebbwatch.sim.cell.CellSpec;
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

/** The page at 3 a.m., for whoever sees little, has no mouse, or holds a phone; and when the service is gone. */
class PageForEveryoneTest {
    /** What a first view may weigh. */
    private static final int MOST_BYTES = 150_000;

    /** Deque's axe-core, in the page itself. */
    private static final String CHECKER = checker();

    private static Browsing browsing;

    @TempDir
    private Path records;

    private Place place;
    private QuietRack rack;
    private String passage;

    private static String checker() {
        try (InputStream script = PageForEveryoneTest.class.getResourceAsStream("/axe.min.js")) {
            return new String(script.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

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
    void a_cell_waits_for_its_load() {
        BoardSpec board = BoardSpec.build(
                        "EB-1",
                        List.of(
                                ChannelSpec.switched(
                                        CellSpec.build("A-17", NMC, 2.0).done(), 22),
                                ChannelSpec.empty(22)))
                .done();
        place = Place.of(QuietRack.of(board, records), records);
        rack = place.rack();
        passage = new Client(place)
                .post(
                        "/api/v1/passages",
                        """
                        {"board": "bench", "channel": 0, "tag": "A-17", "chemistry": "nmc", "ratedAmpereHours": 2.0,
                         "loadOhms": 22, "switched": true}
                        """)
                .text("passageId");
        rack.pass(120_000);
    }

    @AfterEach
    void close() {
        browsing.leave();
        place.close();
    }

    /** The board's switch does not close when it is asked to. */
    private void theLoadIsLost() {
        rack.breakSwitches(true);
        new Client(place).post("/api/v1/passages/" + passage + "/acts", "{\"act\": \"PUT_ON\"}");
        rack.pass(120_000);
    }

    @ParameterizedTest
    @EnumSource(
            value = ColorScheme.class,
            names = {"LIGHT", "DARK"})
    void no_view_has_a_barrier_that_a_checker_finds(ColorScheme scheme) {
        theLoadIsLost();
        Page page = browsing.open(place, Screen.PHONE, scheme);
        assertThat(page.locator("#asking")).not().isEmpty();
        hasNoBarrier(page);
        signIn(page, place);
        for (String view : List.of("passage/" + passage, "plan", "check-in", "evening", "over", "sign-in", "")) {
            page.navigate("/#/" + view);
            assertThat(page.locator("#contents > div:not([hidden])")
                            .locator("h2, h3")
                            .first())
                    .isVisible();
            hasNoBarrier(page);
        }
        page.navigate("/#/passage/" + passage);
        press(page, AriaRole.BUTTON, "Withdraw");
        hasNoBarrier(page);
    }

    private static void hasNoBarrier(Page page) {
        page.evaluate(CHECKER);
        assertThat((List<?>) page.evaluate("() => axe.run().then(found => found.violations"
                        + ".map(rule => rule.id + ': ' + rule.nodes.map(node => node.html).join(' ')))"))
                .as(page.url())
                .isEmpty();
    }

    @Test
    void an_alarm_is_acknowledged_from_a_phone() {
        theLoadIsLost();
        Page page = browsing.open(place, Screen.PHONE, ColorScheme.DARK);
        assertThat(page.locator("#asking")).containsText("A-17");
        assertThat(page).hasTitle(java.util.regex.Pattern.compile("for a person"));
        signIn(page, place);
        press(page, AriaRole.BUTTON, "Acknowledge");
        page.getByLabel("your name, for the record").fill("Ada <b>L.</b>");
        answer(page, "Acknowledge");
        assertThat(page.locator("#known")).containsText("acknowledged by Ada <b>L.</b>");
        assertThat(page.locator("#known b")).hasCount(0);
        assertThat(rack.alarms().alarms().get(0).state()).isEqualTo(AlarmState.ACKNOWLEDGED);
        assertThat(browsing.complaints()).isEmpty();
    }

    @Test
    void what_people_wrote_stays_what_they_wrote() {
        theLoadIsLost();
        Page page = browsing.open(place, Screen.DESK, ColorScheme.LIGHT);
        signIn(page, place);
        String hostile = "<img src=x onerror=alert(1)> =1+2 ${7*7} \" ' ../.. \u202e";
        press(page, AriaRole.BUTTON, "Shelve");
        page.getByLabel("why").fill(hostile);
        answer(page, "Shelve");
        assertThat(page.locator("#known")).containsText("<img src=x onerror=alert(1)> =1+2 ${7*7}");
        assertThat(page.locator("#known img")).hasCount(0);
        assertThat(browsing.complaints()).isEmpty();
    }

    @Test
    void a_page_whose_service_is_gone_looks_stopped_and_comes_back() {
        Page page = browsing.open(place, Screen.PHONE, ColorScheme.LIGHT);
        page.route("**/api/**", route -> route.abort());
        assertThat(page.locator("#stopped"))
                .containsText("Nothing below is the present: go and look at the rack itself.");
        assertThat(page.locator(".figure").first()).hasCSS("font-weight", "400");
        assertThat(page).hasTitle("STOPPED · Ebbwatch");
        page.unroute("**/api/**");
        assertThat(page.locator("#stopped")).isHidden();
        assertThat(page.locator("#said")).containsText("The service answers again.");
    }

    @Test
    void a_refusal_is_said_where_it_was_asked() {
        Page page = browsing.open(place, Screen.PHONE, ColorScheme.LIGHT);
        press(page, AriaRole.LINK, "Sign in");
        page.getByLabel("the operator's token").fill("not the token");
        press(page, AriaRole.BUTTON, "Sign in");
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("The token is not the operator's");
    }

    @Test
    void the_first_view_is_light() {
        Page page = browsing.open(place, Screen.PHONE, ColorScheme.LIGHT);
        Number bytes = (Number) page.evaluate("() => performance.getEntriesByType('resource')"
                + ".concat(performance.getEntriesByType('navigation'))"
                + ".reduce((sum, part) => sum + part.transferSize, 0)");
        assertThat(bytes.intValue()).isBetween(10_000, MOST_BYTES);
    }

    @ParameterizedTest
    @EnumSource(Screen.class)
    void nothing_is_wider_than_the_screen(Screen screen) {
        theLoadIsLost();
        Page page = browsing.open(place, screen, ColorScheme.LIGHT);
        for (String view : List.of("", "passage/" + passage, "plan", "check-in", "evening", "over", "sign-in")) {
            page.navigate("/#/" + view);
            assertThat(page.locator("#contents > div:not([hidden])")
                            .locator("h2, h3")
                            .first())
                    .isVisible();
            assertThat((Boolean) page.evaluate(
                            "() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"))
                    .as(view)
                    .isTrue();
        }
    }
}
