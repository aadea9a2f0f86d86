-- Runs inside headless Neovim: starts the server over stdio, opens a file, asks, edits, and writes what it
-- saw as JSON. It judges nothing; neovim.test.ts does. The order comes as JSON in an environment variable.
local order = vim.fn.json_decode(os.getenv('DOUGHWRIGHT_NEOVIM_ORDER'))
local seen = { problems = {} }
local exit_code

local function note_problem(text)
  table.insert(seen.problems, text)
end

local function diagnostics(buffer)
  local list = {}
  for _, found in ipairs(vim.diagnostic.get(buffer)) do
    table.insert(list, {
      line = found.lnum + 1,
      column = found.col + 1,
      severity = found.severity,
      code = found.code or (found.user_data and found.user_data.lsp and found.user_data.lsp.code),
      message = found.message,
    })
  end
  return list
end

local function wait_for(awaited, holds)
  if not vim.wait(order.milliseconds, holds, 20) then
    note_problem('waited ' .. order.milliseconds .. ' ms for ' .. awaited .. ', and it did not come')
  end
end

local function ask_about(buffer, method, params)
  params.textDocument = vim.lsp.util.make_text_document_params(buffer)
  local answers, failure = vim.lsp.buf_request_sync(buffer, method, params, order.milliseconds)
  if failure then
    note_problem(method .. ': ' .. failure)
    return nil
  end
  for _, answer in pairs(answers or {}) do
    if answer.err then
      note_problem(method .. ': ' .. answer.err.message)
    end
    return answer.result
  end
end

local function ask(buffer, method, line, column)
  return ask_about(buffer, method, { position = { line = line - 1, character = column - 1 } })
end

-- Takes the action whose title holds the words, as Neovim's own menu would: its edits are asked for where they are missing.
local function take_action(buffer, client_id, line, words)
  local client = vim.lsp.get_client_by_id(client_id)
  local place = { line = line - 1, character = 2 }
  local params = {
    textDocument = vim.lsp.util.make_text_document_params(buffer),
    range = { start = place, ['end'] = place },
    context = { diagnostics = {} },
  }
  local offered = client.request_sync('textDocument/codeAction', params, order.milliseconds, buffer)
  for _, action in ipairs((offered or {}).result or {}) do
    if action.title:find(words, 1, true) then
      if not action.edit then
        action = client.request_sync('codeAction/resolve', action, order.milliseconds, buffer).result
      end
      vim.lsp.util.apply_workspace_edit(action.edit, client.offset_encoding)
      return action.title
    end
  end
  note_problem('no action "' .. words .. '" is offered on line ' .. line)
end

local function work()
  vim.cmd('edit ' .. vim.fn.fnameescape(order.file))
  local buffer = vim.api.nvim_get_current_buf()
  vim.api.nvim_buf_set_option(buffer, 'filetype', 'doughwright')

  local started = vim.loop.hrtime()
  local client_id = vim.lsp.start_client({
    name = 'doughwright',
    cmd = order.command,
    root_dir = order.folder,
    on_exit = function(code)
      exit_code = code
    end,
    on_error = function(code)
      note_problem('the client met error ' .. tostring(code))
    end,
  })
  if not client_id then
    note_problem('the server did not start')
    return
  end
  vim.lsp.buf_attach_client(buffer, client_id)
  wait_for('the server to be initialized', function()
    local client = vim.lsp.get_client_by_id(client_id)
    return client ~= nil and client.initialized == true
  end)
  wait_for('diagnostics', function()
    return #vim.diagnostic.get(buffer) >= order.expectedDiagnostics
  end)
  seen.milliseconds_to_diagnostics = (vim.loop.hrtime() - started) / 1e6
  seen.diagnostics = diagnostics(buffer)
  seen.hover = ask(buffer, 'textDocument/hover', order.hover.line, order.hover.column)

  seen.tokens = ask_about(buffer, 'textDocument/semanticTokens/full', {})
  seen.legend = vim.lsp.get_client_by_id(client_id).server_capabilities.semanticTokensProvider.legend
  seen.signature = ask(buffer, 'textDocument/signatureHelp', order.signature.line, order.signature.column)
  seen.hints = ask_about(buffer, 'textDocument/inlayHint', {
    range = { start = { line = 0, character = 0 }, ['end'] = { line = vim.api.nvim_buf_line_count(buffer), character = 0 } },
  })

  -- A half-typed line asks for completion at its end.
  vim.api.nvim_buf_set_lines(buffer, -1, -1, false, { order.halfTyped })
  local last = vim.api.nvim_buf_line_count(buffer)
  seen.completion = ask(buffer, 'textDocument/completion', last, #order.halfTyped + 1)
  vim.api.nvim_buf_set_lines(buffer, last - 1, last, false, {})

  -- The cure, typed line by line: incremental changes reach the server.
  for _, cure in ipairs(order.cures) do
    local replacement = cure.text == '' and {} or { cure.text }
    vim.api.nvim_buf_set_lines(buffer, cure.line - 1, cure.line, false, replacement)
  end
  wait_for('the diagnostics to go', function()
    return #vim.diagnostic.get(buffer) == 0
  end)
  seen.diagnostics_after_cure = diagnostics(buffer)
  seen.hover_after_cure = ask(buffer, 'textDocument/hover', order.hover.line, order.hover.column)

  seen.action = take_action(buffer, client_id, order.action.line, order.action.words)
  seen.lines_after_action = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)

  vim.lsp.get_client_by_id(client_id).stop()
  wait_for('the server to exit', function()
    return exit_code ~= nil
  end)
  seen.exit_code = exit_code
end

local worked, failure = pcall(work)
if not worked then
  note_problem(tostring(failure))
end
local out = assert(io.open(order.report, 'w'))
out:write(vim.fn.json_encode(seen))
out:close()
vim.cmd('qall!')
