using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace HomeLine.Web.Tests;

internal static class AntiforgeryStub
{
    public static void AddAntiforgeryStub(this IServiceCollection services) => services.AddSingleton<AntiforgeryStateProvider, Fixed>();

    private sealed class Fixed : AntiforgeryStateProvider
    {
        public override AntiforgeryRequestToken? GetAntiforgeryToken() => new("token", "__RequestVerificationToken");
    }
}
