-- Run inside Neovim by neovim.test.ts: opens each plan it is given, writes down the diagnostics it sees, makes a comment
-- of the line of the first one, and writes down what is left.
local arguments = vim.fn.json_decode(table.concat(vim.fn.readfile(vim.env.SCREED_JOURNEY), '\n'))
dofile(arguments.plugin).setup({ cmd = arguments.command })

local function seen()
  return vim.tbl_map(function(each)
    local lsp = (each.user_data or {}).lsp or {}
    return { line = each.lnum, from = each.col, to = each.end_col, severity = each.severity, code = each.code or lsp.code, message = each.message }
  end, vim.diagnostic.get(0))
end

local function shows(first)
  for _, each in ipairs(seen()) do
    if each.code == first.code and each.message == first.message then
      return true
    end
  end
  return false
end

local results = {}
for _, file in ipairs(arguments.files) do
  vim.cmd('edit ' .. vim.fn.fnameescape(file))
  local result = { file = file, filetype = vim.bo.filetype }
  result.came = vim.wait(arguments.patience, function()
    return #vim.diagnostic.get(0) > 0
  end, 10)
  result.before = seen()
  local first = result.before[1]
  if first ~= nil then
    local line = vim.api.nvim_buf_get_lines(0, first.line, first.line + 1, false)[1]
    vim.api.nvim_buf_set_lines(0, first.line, first.line + 1, false, { '# ' .. line })
    result.went = vim.wait(arguments.patience, function()
      return not shows(first)
    end, 10)
    result.after = seen()
  end
  table.insert(results, result)
end
vim.fn.writefile({ vim.fn.json_encode(results) }, arguments.results)
vim.cmd('qall!')
