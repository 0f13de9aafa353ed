using HomeLine.Agency;
using HomeLine.Web;
using HomeLine.Web.CommandLine;
using HomeLine.Web.Endpoints;
using HomeLine.Web.Practice;

if (ConsoleCommands.Handle(args)) return ConsoleCommands.Run(args);
bool isPractice = PracticeCopy.IsAsked(args);
if (isPractice) args = args[1..];

// The program brings its settings along; the database lies where the program is started.
WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
{
    Args = args,
    ContentRootPath = File.Exists("appsettings.json") ? null : AppContext.BaseDirectory,
});
PracticeCopy? practice = null;
if (isPractice)
{
    Outcome<PracticeCopy> copy = PracticeCopy.Take(builder.Configuration, Environment.CurrentDirectory);
    if (!copy.Succeeded)
    {
        await Console.Error.WriteLineAsync($"{copy.Refusal!.Sentence} {copy.Refusal.Action}");
        return ExitCodes.BadInput;
    }

    practice = copy.Value;
    builder.Configuration.AddInMemoryCollection(practice.Settings());
}

using PracticeCopy? thrownAwayAtTheEnd = practice;
builder.Services.AddHomeLineAgency(builder.Configuration, Environment.CurrentDirectory);
builder.AddFrontDesk();

WebApplication app = builder.Build();
app.UseFrontDesk();
app.MapSignIn();
app.MapSheets();
app.MapVisits();
app.MapHealth();
app.MapStaticAssets().AllowAnonymous();
app.MapWorkingPages();

if (!await app.OpenDoorsAsync()) return 1;
await app.RunAsync();
return 0;
