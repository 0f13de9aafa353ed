using HomeLine.Agency;
using HomeLine.Web;
using HomeLine.Web.CommandLine;
using HomeLine.Web.Endpoints;

if (ConsoleCommands.Handle(args)) return ConsoleCommands.Run(args);

WebApplicationBuilder builder = WebApplication.CreateBuilder(args);
builder.Services.AddHomeLineAgency(builder.Configuration, builder.Environment.ContentRootPath);
builder.AddFrontDesk();

WebApplication app = builder.Build();
app.UseFrontDesk();
app.MapSignIn();
app.MapSheets();
app.MapHealth();
app.MapStaticAssets().AllowAnonymous();
app.MapWorkingPages();

if (!await app.OpenDoorsAsync()) return 1;
await app.RunAsync();
return 0;
