using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace HomeLine.EndToEnd;

/// <summary>Two coordinators change the demonstration week by mouse and by keyboard, see each other, take back, and publish.</summary>
public sealed class WeekEditingWalk
{
    private const string Work = "/week/2027-03-08/work";

    [Fact]
    public async Task A_week_is_changed_by_hand_by_two_people()
    {
        Assert.SkipUnless(Browser.IsInstalled, Browser.Missing);
        await using AppUnderTest app = await AppUnderTest.StartAsync();
        await using Browser browser = await Browser.StartAsync();
        IPage page = await browser.OpenAsync(1440, 900);
        await DemoAgency.OpenAsync(page, app);
        await page.GotoAsync(app.Address + Work);
        await page.StandsUpAsync("work");

        await ByKeyboardAsync(page);
        await ByMouseAsync(page);
        await UndoAsync(page);
        await TwoPeopleAsync(browser, page, app);
        await OnAPhoneAsync(browser, page, app);
        await OnlyAFewAsync(browser, page, app);
        await PublishAsync(page);
        await LeaveAsync(page);
        await RefusedAsync(page);
    }

    /// <summary>A leave over published visits lists them first.</summary>
    private static async Task LeaveAsync(IPage page)
    {
        await page.GetByText("Put a nurse’s leave down").ClickAsync();
        await page.GetByLabel("Nurse", new() { Exact = true }).SelectOptionAsync("N7");
        await page.GetByLabel("First day").FillAsync("2027-03-10");
        await page.GetByLabel("Last day").FillAsync("2027-03-10");
        await page.GetByLabel("In a word").FillAsync("training");
        await page.GetByRole(AriaRole.Button, new() { Name = "See whom it touches" }).ClickAsync();
        await Expect(page.GetByText("3 published visits lie in it")).ToBeVisibleAsync();
        await page.StandsUpAsync("work-leave");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the leave" }).ClickAsync();
        await Expect(page.GetByText("Saffron Gullwing does not work on Wed")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Count the weeks ahead" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "Mon 15 Mar" })).ToBeVisibleAsync();
        await page.GetByText("Load of each nurse").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Look back on the weeks before" }).ClickAsync();
        await Expect(page.GetByText("Evenings: Bramble Quickstile 3")).ToBeVisibleAsync();
        await page.GetByText("Faces and continuity of each patient").ClickAsync();
        await page.StandsUpAsync("work-in-view");
    }

    /// <summary>Some nurses only, by name or town; the address says which.</summary>
    private static async Task OnlyAFewAsync(Browser browser, IPage page, AppUnderTest app)
    {
        foreach (int width in (int[])[1440, 390])
        {
            IPage other = await browser.OpenAsync(width, 844);
            await SameSignInAsync(other, page);
            await other.GotoAsync(app.Address + "/week/2027-03-08");
            await other.GetByLabel("Name or number").FillAsync("brass");
            await other.GetByLabel("Name or number").PressAsync("Enter");
            await Expect(other.GetByText("1 of 8 nurses are shown.")).ToBeVisibleAsync();
            await Expect(other).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("nurse=brass"));
            await other.StandsUpAsync("week-one-nurse");
            await other.GetByRole(AriaRole.Link, new() { Name = "Work on this week" }).ClickAsync();
            await Expect(other.GetByText("1 of 8 nurses are shown.")).ToBeVisibleAsync();
            await Expect(other.Locator(".nurse-line")).ToHaveCountAsync(1);
            await other.GotoAsync(app.Address + "/week/2027-03-08?area=Skerrow%20Spit");
            await Expect(other.GetByText("of 8 nurses are shown.")).ToBeVisibleAsync();
            await other.StandsUpAsync("week-one-area");
        }
    }

    private static async Task PublishAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish the week" }).ClickAsync();
        await Expect(page.GetByText("As published, version 2.")).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "The draft is as published" })).ToBeVisibleAsync();
    }

    /// <summary>Since the leave the week breaks a rule: no draft of it is published before it is mended.</summary>
    private static async Task RefusedAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Fri 12 Mar", Exact = true }).ClickAsync();
        await Visit(page, "P35").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Pin it here" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish the week" }).ClickAsync();
        await Expect(page.GetByText("This draft breaks")).ToBeVisibleAsync();
        await Expect(page.GetByText("the draft is kept as it is")).ToBeVisibleAsync();
        await page.StandsUpAsync("work-not-published");
    }

    /// <summary>Enter picks up, arrows walk through places that work and say each, Escape puts back, Enter drops.</summary>
    private static async Task ByKeyboardAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Thu 11 Mar", Exact = true }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Visit(page, "P35").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(Said(page)).ToContainTextAsync("places work. Arrow keys walk through them");
        await page.StandsUpAsync("work-in-hand");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(Said(page)).ToContainTextAsync("Place ");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "People to tell" })).ToBeVisibleAsync();
        await page.StandsUpAsync("work-place-looked-at");
        await page.Keyboard.PressAsync("Escape");
        await Expect(Said(page)).ToContainTextAsync("is put back");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Nothing in hand" })).ToBeVisibleAsync();
        await Expect(Visit(page, "P35")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(Said(page)).ToContainTextAsync("places work");
        await page.Keyboard.PressAsync("ArrowRight");
        await Expect(Said(page)).ToContainTextAsync("Fri 12 Mar");
        await page.Keyboard.PressAsync("Enter");
        await Expect(Said(page)).ToContainTextAsync("P35 moves from Thu 09:40 N5 to Fri");
        await Expect(Visit(page, "P35")).ToBeFocusedAsync();
        await page.StandsUpAsync("work-dropped");
    }

    private static async Task ByMouseAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Tue 9 Mar", Exact = true }).ClickAsync();
        // A practical nurse may not do this: the rule is said, nothing moves.
        await DragAsync(page, Visit(page, "P39"), page.Locator("ol[data-nurse=N5]"));
        await page.KeepPictureAsync("work-after-drag");
        await Expect(page.GetByText("A rule forbids it").Or(page.GetByText("rules forbid it"))).ToBeVisibleAsync();
        await Expect(page.GetByText("Linden Pennywhirl lacks").First).ToBeVisibleAsync();
        await page.StandsUpAsync("work-forbidden");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put back" }).ClickAsync();
        // Onto a day whose cell lights up.
        await Visit(page, "P55").ClickAsync();
        ILocator lit = page.Locator("button.cell.lit").First;
        await Expect(lit).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put back" }).ClickAsync();
        await Visit(page, "P55").ClickAsync();
        await lit.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Drop it here" })).ToBeEnabledAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Drop it here" }).ClickAsync();
        await Expect(Said(page)).ToContainTextAsync("Done: P55");
        await Expect(page.GetByRole(AriaRole.Heading, new() { NameRegex = new("Draft beside the published week: [2-9] changes") })).ToBeVisibleAsync();
    }

    private static async Task UndoAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(Said(page)).ToContainTextAsync("Taken back: P55");
        await Expect(page.GetByRole(AriaRole.Heading, new() { NameRegex = new("Draft beside the published week: 1 change$") })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Redo" }).ClickAsync();
        await Expect(Said(page)).ToContainTextAsync("Made again: P55");
    }

    /// <summary>Each sees the other's change at once; what one holds stays in hand.</summary>
    private static async Task TwoPeopleAsync(Browser browser, IPage page, AppUnderTest app)
    {
        IPage other = await browser.OpenAsync(1440, 900);
        await SameSignInAsync(other, page);
        await other.GotoAsync(app.Address + Work);
        await Expect(other.GetByRole(AriaRole.Heading, new() { NameRegex = new("Draft beside the published week: [2-9] changes") })).ToBeVisibleAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Wed 10 Mar", Exact = true }).ClickAsync();
        await Visit(other, "P42").ClickAsync();
        await Expect(other.GetByRole(AriaRole.Button, new() { Name = "Pin it here" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(other.GetByText("Marrowby Dovetail: Taken back: P55").First).ToBeVisibleAsync();
        await Expect(other.GetByRole(AriaRole.Heading, new() { Name = "P42" })).ToBeVisibleAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Pin it here" }).ClickAsync();
        await Expect(page.GetByText("P42 Wed 08:34 N2 is pinned").First).ToBeVisibleAsync();
        await other.StandsUpAsync("work-two-people");
    }

    private static async Task OnAPhoneAsync(Browser browser, IPage page, AppUnderTest app)
    {
        foreach (int width in (int[])[390, 320])
        {
            IPage phone = await browser.OpenAsync(width, 844, ColorScheme.Dark);
            await SameSignInAsync(phone, page);
            await phone.GotoAsync(app.Address + Work);
            await phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Thu 11 Mar[:,]") }).ClickAsync();
            await phone.StandsUpAsync("dark-work");
            await Expect(phone).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("day=2027-03-11"));
            await Visit(phone, "P37").ClickAsync();
            await Expect(phone.GetByRole(AriaRole.Link, new() { NameRegex = new("^Fri 12 Mar.*place") })).ToBeVisibleAsync();
            await phone.GetByRole(AriaRole.Button, new() { Name = "Look at the best place" }).ClickAsync();
            await Expect(phone.GetByRole(AriaRole.Button, new() { Name = "Drop it here" })).ToBeVisibleAsync();
            await phone.StandsUpAsync("dark-work-in-hand");
        }
    }

    private static ILocator Visit(IPage page, string patient) =>
        page.Locator("button[data-visit]").Filter(new() { Has = page.Locator(".code", new() { HasTextString = patient }) }).First;

    private static ILocator Said(IPage page) => page.Locator("p[role=status][aria-live=polite].visually-hidden").First;

    /// <summary>Presses, moves until places light up (lines grow then), goes to the target and lets go.</summary>
    private static async Task DragAsync(IPage page, ILocator from, ILocator to)
    {
        await to.ScrollIntoViewIfNeededAsync();
        LocatorBoundingBoxResult start = (await from.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(start.X + 10, start.Y + 15);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(start.X + 40, start.Y + 30, new() { Steps = 4 });
        await Expect(page.GetByText("places work").Or(page.GetByText("place works")).Filter(new() { Visible = true }).First).ToBeVisibleAsync();
        LocatorBoundingBoxResult end = (await to.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(end.X + (end.Width / 2), end.Y + Math.Min(30, end.Height / 2), new() { Steps = 8 });
        await page.KeepPictureAsync("work-dragging");
        end = (await to.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(end.X + (end.Width / 2), end.Y + Math.Min(30, end.Height / 2), new() { Steps = 2 });
        await page.Mouse.UpAsync();
    }

    private static async Task SameSignInAsync(IPage other, IPage signedIn) =>
        await other.Context.AddCookiesAsync((await signedIn.Context.CookiesAsync()).Select(c => new Cookie
        {
            Name = c.Name,
            Value = c.Value,
            Domain = c.Domain,
            Path = c.Path,
            HttpOnly = c.HttpOnly,
            Secure = c.Secure,
        }));
}
