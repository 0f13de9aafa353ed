using HomeLine.Web.Pages.Visits;
using Microsoft.AspNetCore.DataProtection;
using NodaTime;

namespace HomeLine.Web.Tests.Pages.Visits;

/// <summary>A draft on a device is read by the person who wrote it, for three days, while the account is open; and by nobody else.</summary>
public sealed class DraftKeysTests
{
    private readonly SetClock clock = new();
    private readonly DraftKeys keys;

    public DraftKeysTests() => keys = new DraftKeys(new EphemeralDataProtectionProvider(), clock);

    [Fact]
    public void The_writer_gets_the_key_back_within_three_days()
    {
        DraftKey key = keys.New("u-1");
        clock.Hours = 71;
        Assert.Equal(key.Key, keys.Open("u-1", key.Seal));
    }

    [Fact]
    public void Nobody_else_gets_it_and_nobody_after_three_days()
    {
        DraftKey key = keys.New("u-1");
        Assert.Null(keys.Open("u-2", key.Seal));
        clock.Hours = 72;
        Assert.Null(keys.Open("u-1", key.Seal));
    }

    [Theory]
    [InlineData("")]
    [InlineData("not a seal")]
    public void A_seal_that_was_tampered_with_opens_nothing(string change) => Assert.Null(keys.Open("u-1", change + keys.New("u-1").Seal[5..]));

    [Fact]
    public void Each_page_has_its_own_key_and_the_seal_does_not_show_it()
    {
        DraftKey one = keys.New("u-1");
        Assert.NotEqual(one.Key, keys.New("u-1").Key);
        Assert.DoesNotContain(one.Key, one.Seal, StringComparison.Ordinal);
    }

    [Fact]
    public void The_seal_says_whose_day_a_device_keeps_until_it_is_too_old()
    {
        DraftKey key = keys.New("u-1");
        Assert.Equal("u-1", keys.PersonOf(key.Seal));
        Assert.Null(keys.PersonOf("not a seal"));
        clock.Hours = 72;
        Assert.Null(keys.PersonOf(key.Seal));
    }

    private sealed class SetClock : IClock
    {
        public int Hours { get; set; }

        public Instant GetCurrentInstant() => Instant.FromUtc(2027, 3, 9, 13, 0) + Duration.FromHours(Hours);
    }
}
