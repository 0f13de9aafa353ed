using HomeLine.Web.Pages.TryRules;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.TryRules;

public sealed class NowRowTests
{
    private static readonly LocalDateTime Later = new(2027, 3, 9, 6, 0);

    [Theory]
    [InlineData("# title\nnow 2027-03-08 06:00\nline PICC", "# title\nnow 2027-03-09 06:00\nline PICC")]
    [InlineData("# title\r\nnow 2027-03-08 06:00\r\nline PICC", "# title\r\nnow 2027-03-09 06:00\r\nline PICC")]
    [InlineData("line PICC", "now 2027-03-09 06:00\nline PICC")]
    public void The_buttons_move_the_row_that_says_when_now_is(string before, string after) => Assert.Equal(after, NowRow.Moved(before, Later));
}
