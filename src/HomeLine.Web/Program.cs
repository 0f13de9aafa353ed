using HomeLine.Agency;
using HomeLine.Web;
using HomeLine.Web.CommandLine;
using HomeLine.Web.Endpoints;

if (ConsoleCommands.Handle(args)) return ConsoleCommands.Run(args);

// The program brings its settings along; the database lies where the program is started.
WebApplicationBuilder builder = WebApplication.CreateBuilder(new WebApplicationOptions
{
    Args = args,
    ContentRootPath = File.Exists("appsettings.json") ? null : AppContext.BaseDirectory,
});
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
